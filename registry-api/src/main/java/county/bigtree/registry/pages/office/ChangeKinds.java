package county.bigtree.registry.pages.office;

import java.util.Locale;

import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/**
 * What kinds of changes are called on pages: by the message for the kind, or by its own
 * words where none was written.
 */
@Component
class ChangeKinds {

	private final MessageSource messages;

	ChangeKinds(MessageSource messages) {
		this.messages = messages;
	}

	public String of(String kind) {
		return String.valueOf(this.messages.getMessage("change." + kind, null, kind.replace('-', ' '), Locale.US));
	}

}

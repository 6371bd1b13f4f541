package county.bigtree.registry.pages.paper;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;

import county.bigtree.registry.paper.QrCode;
import county.bigtree.registry.session.PublicAddress;
import org.jspecify.annotations.Nullable;

import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/**
 * What all papers have: a title, a line at the foot, and where the service is known to be
 * reached, a code that leads to a tree there.
 */
@Component
class Sheets {

	private final MessageSource messages;

	private final PublicAddress address;

	Sheets(MessageSource messages, PublicAddress address) {
		this.messages = messages;
		this.address = address;
	}

	/** The beginning of a paper's model. */
	Map<String, @Nullable Object> begin(String title, String foot) {
		Map<String, @Nullable Object> model = new HashMap<>();
		model.put("title", title);
		model.put("foot", foot);
		model.put("code", null);
		return model;
	}

	/**
	 * Leads to the tree of that tag; null where the service doesn't know its own address.
	 */
	@Nullable QrCode code(String tag) {
		return this.address.isKnown() ? QrCode.of(this.address.of("/t/" + tag)) : null;
	}

	String say(String key, Object... about) {
		return Objects.requireNonNull(this.messages.getMessage(key, about, Locale.US));
	}

}

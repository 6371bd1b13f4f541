package county.bigtree.registry.edition;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

import county.bigtree.registry.paper.PaperSize;
import county.bigtree.registry.paper.PrintPaper;
import org.jspecify.annotations.Nullable;

import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/**
 * An edition's list as tagged PDF on Letter, with the head of the journal printed in it.
 */
@Component
class EditionInPdf {

	private final PrintPaper printing;

	private final MessageSource messages;

	EditionInPdf(PrintPaper printing, MessageSource messages) {
		this.printing = printing;
		this.messages = messages;
	}

	byte[] write(EditionList list) {
		String title = this.messages.getMessage("edition.title", new Object[] { list.edition(), list.countyName() },
				Locale.US);
		Map<String, @Nullable Object> model = new HashMap<>();
		model.put("title", title);
		model.put("foot", title);
		model.put("list", list);
		return this.printing.set("edition", model, PaperSize.LETTER);
	}

}

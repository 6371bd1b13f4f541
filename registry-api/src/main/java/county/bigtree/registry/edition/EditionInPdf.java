package county.bigtree.registry.edition;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
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
		model.put("said", new Said());
		return this.printing.set("edition", model, PaperSize.LETTER);
	}

	/**
	 * Days and instants in words, the latter in UTC.
	 */
	public record Said() {

		private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.US);

		private static final DateTimeFormatter INSTANT = DateTimeFormatter
			.ofPattern("d MMMM uuuu, HH:mm:ss 'UTC'", Locale.US)
			.withZone(ZoneOffset.UTC);

		private static final int WHOLE_DAY = "uuuu-MM-dd".length();

		public String day(LocalDate day) {
			return DAY.format(day);
		}

		public String instant(Instant instant) {
			return INSTANT.format(instant);
		}

		/** A day that may be known by its month or year alone. */
		public String measured(String on) {
			return (on.length() == WHOLE_DAY) ? day(LocalDate.parse(on)) : on;
		}

	}

}

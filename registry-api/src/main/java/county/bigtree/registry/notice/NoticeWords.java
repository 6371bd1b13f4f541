package county.bigtree.registry.notice;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Objects;

import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/**
 * Puts notices into words. They name trees by their tag and species, and no place, owner
 * or other person: those stand on the page, for who may see them.
 */
@Component
public class NoticeWords {

	/** Of which several things are told together. */
	private static final List<NoticeKind> GATHERED = List.of(NoticeKind.TITLES_TURNED, NoticeKind.REMEASUREMENT_DUE,
			NoticeKind.WEEKLY_DIGEST);

	private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.US);

	private final MessageSource messages;

	NoticeWords(MessageSource messages) {
		this.messages = messages;
	}

	/** In a line: what a list shows, and a mail's subject. */
	public String title(Notice notice) {
		return say(key(notice) + ".title", notice);
	}

	/** What it means for the recipient. */
	public String text(Notice notice) {
		return say(key(notice) + ".text", notice);
	}

	/** What a page or mail calls the way to it. */
	String link(Notice notice) {
		return say("notice." + notice.kind().code() + ".link", notice);
	}

	String why(Notice notice) {
		return say("notice." + notice.kind().code() + ".why", notice);
	}

	String say(String key, Object... values) {
		return this.messages.getMessage(key, values, Locale.ENGLISH);
	}

	static boolean isGathered(Notice notice) {
		return GATHERED.contains(notice.kind());
	}

	private String say(String key, Notice notice) {
		String tree = (notice.species() != null) ? notice.tag() + ", " + notice.species()
				: String.valueOf(notice.tag());
		return say(key, tree, Objects.requireNonNullElse(notice.countyName(), ""), day(notice.detail()));
	}

	private static String day(String detail) {
		return detail.matches("\\d{4}-\\d\\d-\\d\\d") ? DAY.format(LocalDate.parse(detail)) : detail;
	}

	private static String key(Notice notice) {
		String kind = "notice." + notice.kind().code();
		return isGathered(notice) ? kind : kind + "." + notice.detail();
	}

}

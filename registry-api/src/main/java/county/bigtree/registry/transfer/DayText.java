package county.bigtree.registry.transfer;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.Month;
import java.time.Year;
import java.time.YearMonth;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.KnownDay;

/**
 * Reads days as people write them into lists: {@code 1998-06-14}, {@code 6/14/1998},
 * {@code June 14, 1998}, {@code June 1998}, {@code 1998}. Days in figures are written
 * month first, as is the custom of the United States; a season says the year alone. How
 * lists are written is common practice, no source.
 */
final class DayText {

	private static final String YEAR = "([12][0-9]{3})";

	private static final String NUMBER = "([0-9]{1,2})";

	private static final String MONTH = "(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)([a-z]*)\\.?";

	private static final String BREAK = "[-/. ]";

	private static final Pattern TIME = Pattern
		.compile("[ t][0-9]{1,2}:[0-9]{2}(:[0-9]{2}([.,][0-9]+)?)?( ?[ap]\\.?m\\.?)?( ?z)?$");

	private static final Pattern WEEKDAY = Pattern.compile("^(mon|tue|wed|thu|fri|sat|sun)[a-z]*\\.? ");

	private static final Pattern SHORT_YEAR = Pattern.compile(".*(?<![0-9])[0-9]{1,2}[-/.][0-9]{2}|.*'[0-9]{2}");

	private static final List<Form> FORMS = List.of(form(YEAR, (parts) -> year(parts.group(1))),
			form("(?:spring|summer|fall|autumn)(?: of)? " + YEAR, (parts) -> year(parts.group(1))),
			form(YEAR + BREAK + NUMBER, (parts) -> month(parts.group(1), Integer.parseInt(parts.group(2)))),
			form(NUMBER + BREAK + YEAR, (parts) -> month(parts.group(2), Integer.parseInt(parts.group(1)))),
			form(YEAR + BREAK + NUMBER + BREAK + NUMBER,
					(parts) -> day(parts.group(1), Integer.parseInt(parts.group(2)), parts.group(3))),
			form(NUMBER + BREAK + NUMBER + BREAK + YEAR,
					(parts) -> day(parts.group(3), Integer.parseInt(parts.group(1)), parts.group(2))),
			form(MONTH + "(?: of)?" + BREAK + YEAR, (parts) -> month(parts.group(3), named(parts, 1))),
			form(MONTH + BREAK + NUMBER + "(?:st|nd|rd|th)?" + BREAK + YEAR,
					(parts) -> day(parts.group(4), named(parts, 1), parts.group(3))),
			form(NUMBER + "(?:st|nd|rd|th)?" + BREAK + "?" + MONTH + BREAK + YEAR,
					(parts) -> day(parts.group(4), named(parts, 2), parts.group(1))),
			form(YEAR + BREAK + MONTH + BREAK + NUMBER,
					(parts) -> day(parts.group(1), named(parts, 2), parts.group(4))));

	private DayText() {
	}

	/**
	 * Reads an entry.
	 * @throws InvalidReadingException which says what was not understood
	 */
	static KnownDay read(String entry) {
		String text = plain(entry);
		try {
			for (Form form : FORMS) {
				Matcher written = form.pattern().matcher(text);
				if (written.matches()) {
					return form.reader().apply(written.toMatchResult());
				}
			}
		}
		catch (DateTimeException ex) {
			throw fault("is no day of the calendar, read month first: " + entry);
		}
		throw fault(SHORT_YEAR.matcher(text).matches() ? "must name the year with four digits but was " + entry
				: "must be a day, a month or a year, such as 1998-06-14, 6/14/1998, June 1998 or 1998, but was "
						+ entry);
	}

	private static String plain(String entry) {
		String text = entry.strip().toLowerCase(Locale.ROOT).replace(',', ' ').replaceAll("\\s+", " ");
		return WEEKDAY.matcher(TIME.matcher(text).replaceFirst("")).replaceFirst("").strip();
	}

	private static KnownDay year(String year) {
		return KnownDay.endingOn(Year.parse(year).atMonth(12).atEndOfMonth(), KnownDay.Precision.YEAR);
	}

	private static KnownDay month(String year, int month) {
		return KnownDay.endingOn(YearMonth.of(Integer.parseInt(year), month).atEndOfMonth(), KnownDay.Precision.MONTH);
	}

	private static KnownDay day(String year, int month, String day) {
		return KnownDay.of(LocalDate.of(Integer.parseInt(year), month, Integer.parseInt(day)));
	}

	/** A month by its name or the beginning of it. */
	private static int named(MatchResult parts, int group) {
		String name = parts.group(group) + parts.group(group + 1);
		return Arrays.stream(Month.values())
			.filter((month) -> month.name().toLowerCase(Locale.ROOT).startsWith(name))
			.findFirst()
			.orElseThrow(() -> new DateTimeException("No month is called " + name))
			.getValue();
	}

	private static Form form(String pattern, Function<MatchResult, KnownDay> reader) {
		return new Form(Pattern.compile(pattern), reader);
	}

	private static InvalidReadingException fault(String detail) {
		return new InvalidReadingException("", Flaw.OUT_OF_RANGE, detail);
	}

	/**
	 * A way to write a day.
	 */
	private record Form(Pattern pattern, Function<MatchResult, KnownDay> reader) {
	}

}

package county.bigtree.registry.transfer;

import county.bigtree.domain.quantity.InvalidReadingException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

/**
 * Days as lists have them. How they are written is common practice, no source; but what
 * begins with the year is as ISO 8601 has it.
 */
class DayTextTest {

	@ParameterizedTest
	@CsvSource(delimiter = '|', textBlock = """
			1998|1998
			1998-06|1998-06
			1998/6|1998-06
			6/1998|1998-06
			06-1998|1998-06
			June 1998|1998-06
			Jun. 1998|1998-06
			JUNE, 1998|1998-06
			June of 1998|1998-06
			Sept 1998|1998-09
			May-1998|1998-05
			summer 1998|1998
			Fall of 2001|2001
			6/1/1998|1998-06-01
			06/01/1998|1998-06-01
			6-1-1998|1998-06-01
			6.14.1998|1998-06-14
			1998-06-14|1998-06-14
			1998/06/14|1998-06-14
			1998-06-14 00:00:00|1998-06-14
			1998-06-14T09:30:00.000Z|1998-06-14
			6/14/1998 9:30 AM|1998-06-14
			June 14, 1998|1998-06-14
			June 14th, 1998|1998-06-14
			Jun 14 1998|1998-06-14
			14 June 1998|1998-06-14
			14-Jun-1998|1998-06-14
			14JUN-1998|1998-06-14
			1998 Jun 14|1998-06-14
			Sunday, June 14, 1998|1998-06-14
			2/29/2000|2000-02-29
			""")
	void readsDaysAsTheyAreWritten(String entry, String day) {
		assertThat(DayText.read(entry)).hasToString(day);
		assertThat(DayText.read("  " + entry + " ")).hasToString(day);
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|', textBlock = """
			1998|1998-12-31
			June 1998|1998-06-30
			2/2000|2000-02-29
			6/1/1998|1998-06-01
			""")
	void holdsFromTheLastDayThatItCanBe(String entry, String last) {
		assertThat(DayText.read(entry).last()).hasToString(last);
	}

	@ParameterizedTest
	@ValueSource(strings = { "2/30/1998", "14/6/1998", "1998-13", "13/1998", "2/29/1900", "0/1998", "1998-00-00",
			"June 31, 1998", "Marchtember 1998", "Juno 1998" })
	void refusesWhatIsNoDayOfTheCalendar(String entry) {
		assertThatExceptionOfType(InvalidReadingException.class).isThrownBy(() -> DayText.read(entry))
			.satisfies((ex) -> assertThat(ex.detail()).startsWith("is no day of the calendar").contains(entry));
	}

	@ParameterizedTest
	@ValueSource(strings = { "6/1/98", "6-14-98", "June '98", "12/98" })
	void refusesYearsOfTwoDigits(String entry) {
		assertThatExceptionOfType(InvalidReadingException.class).isThrownBy(() -> DayText.read(entry))
			.satisfies((ex) -> assertThat(ex.detail()).startsWith("must name the year with four digits"));
	}

	@ParameterizedTest
	@ValueSource(strings = { "c. 1998", "about 1998", "1998?", "winter 1998", "unknown", "n/a", "1998-2001", "98",
			"35960", "3019", "199", "before the flood" })
	void refusesWhatSaysNoDay(String entry) {
		assertThatExceptionOfType(InvalidReadingException.class).isThrownBy(() -> DayText.read(entry))
			.satisfies((ex) -> assertThat(ex.detail()).startsWith("must be a day, a month or a year"));
	}

	@Test
	void comesToAnEndOnALongText() {
		assertThatExceptionOfType(InvalidReadingException.class).isThrownBy(() -> DayText.read("1/".repeat(50_000)));
	}

}

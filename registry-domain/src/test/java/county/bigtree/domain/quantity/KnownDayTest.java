package county.bigtree.domain.quantity;

import java.time.DateTimeException;
import java.time.LocalDate;

import county.bigtree.domain.quantity.KnownDay.Precision;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

/**
 * Days of reduced precision (ISO 8601-1:2019, 5.2.2); that they hold from their last day
 * is a rule of this register, no source.
 */
class KnownDayTest {

	@ParameterizedTest
	@CsvSource({ "1998, 1998-12-31, YEAR", "2024-02, 2024-02-29, MONTH", "2023-02, 2023-02-28, MONTH",
			"2026-05-02, 2026-05-02, DAY" })
	void readsADayAMonthOrAYearAndWritesItAgain(String text, LocalDate last, Precision precision) {
		KnownDay day = KnownDay.parse(text);
		assertThat(day).isEqualTo(KnownDay.endingOn(last, precision)).hasToString(text);
	}

	@ParameterizedTest
	@ValueSource(strings = { "98", "1998-13", "1998-1", "2023-02-29", "may 1998", "", "19980" })
	void refusesWhatIsNone(String text) {
		assertThatExceptionOfType(DateTimeException.class).isThrownBy(() -> KnownDay.parse(text));
	}

	@Test
	void aMonthEndsOnItsLastDay() {
		assertThatIllegalArgumentException()
			.isThrownBy(() -> KnownDay.endingOn(LocalDate.of(2024, 2, 28), Precision.MONTH));
	}

}

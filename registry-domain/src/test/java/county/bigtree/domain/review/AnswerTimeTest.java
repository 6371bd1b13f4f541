package county.bigtree.domain.review;

import java.time.LocalDate;

import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

/**
 * How long a returned nomination can be answered. Sixty days from 1 March end on 30
 * April: 30 days of March are left, and 30 of April. The days themselves are common
 * practice, no source.
 */
class AnswerTimeTest {

	private static final LocalDate RETURNED = LocalDate.of(2026, 3, 1);

	private final AnswerTime sixty = new AnswerTime(RETURNED, 60);

	@Test
	void remindsAFortnightBeforeItLapses() {
		assertThat(this.sixty.remindsOn()).isEqualTo("2026-04-16");
		assertThat(this.sixty.lapsesOn(LocalDate.of(2026, 4, 16))).isEqualTo("2026-04-30");
	}

	@Test
	void putsOffTheLapseWhereTheReminderWasLate() {
		assertThat(this.sixty.lapsesOn(LocalDate.of(2026, 4, 20))).isEqualTo("2026-05-04");
	}

	@Test
	void remindsAtHalfTimeWhereThatIsShort() {
		AnswerTime week = new AnswerTime(RETURNED, 7);
		assertThat(week.remindsOn()).isEqualTo("2026-03-05");
		assertThat(week.lapsesOn(LocalDate.of(2026, 3, 5))).isEqualTo("2026-03-08");
		assertThat(new AnswerTime(RETURNED, 1).lapsesOn(RETURNED)).isEqualTo("2026-03-02");
	}

	@Test
	void lapsesOnItsDayAndNotBefore() {
		LocalDate lapsesOn = LocalDate.of(2026, 4, 30);
		assertThat(AnswerTime.mayLapse(lapsesOn, LocalDate.of(2026, 4, 29))).map(Refusal::detail)
			.hasValue("It can be answered until 2026-04-29.");
		assertThat(AnswerTime.mayLapse(lapsesOn, lapsesOn)).isEmpty();
	}

	@Test
	void rejectsNoTimeAtAll() {
		assertThatIllegalArgumentException().isThrownBy(() -> new AnswerTime(RETURNED, 0))
			.withMessage("answerDays must be 1 or more, was 0");
	}

}

package county.bigtree.domain.review;

import java.time.LocalDate;
import java.util.Optional;

import county.bigtree.domain.review.Refusal.Ground;

/**
 * How long a returned nomination can be answered: it is reminded of some days before it
 * lapses, and never lapses sooner after the reminder (common practice, no source).
 *
 * @param returnedOn the day on which more was asked
 * @param answerDays days for the answer, 1 or more
 */
public record AnswerTime(LocalDate returnedOn, int answerDays) {

	private static final int NOTICE_DAYS = 14;

	public AnswerTime {
		if (answerDays < 1) {
			throw new IllegalArgumentException("answerDays must be 1 or more, was " + answerDays);
		}
	}

	/** From this day on the nominator is reminded. */
	public LocalDate remindsOn() {
		return this.returnedOn.plusDays(this.answerDays - noticeDays());
	}

	/**
	 * The day on which it lapses, if the reminder went out on the day given: put off
	 * where that was late.
	 */
	public LocalDate lapsesOn(LocalDate remindedOn) {
		LocalDate due = this.returnedOn.plusDays(this.answerDays);
		LocalDate noticed = remindedOn.plusDays(noticeDays());
		return noticed.isAfter(due) ? noticed : due;
	}

	/**
	 * Whether it may lapse by now.
	 * @param lapsesOn as the reminder said
	 */
	public static Optional<Refusal> mayLapse(LocalDate lapsesOn, LocalDate today) {
		return today.isBefore(lapsesOn)
				? Optional.of(new Refusal(Ground.NOT_NOW, "It can be answered until " + lapsesOn.minusDays(1) + "."))
				: Optional.empty();
	}

	/** Half the time, where that is less than a fortnight. */
	private int noticeDays() {
		return Math.min(NOTICE_DAYS, this.answerDays / 2);
	}

}

package county.bigtree.domain.standing;

import java.time.LocalDate;

import org.jspecify.annotations.Nullable;

/**
 * A tree's score over a span of days, and why it ended.
 *
 * @param scored the score
 * @param from the first day
 * @param until the day after the last, or null while it is open
 * @param ended why it ended, null while it is open
 */
public record ScoreSpan(ScoredTree scored, LocalDate from, @Nullable LocalDate until, @Nullable Ended ended) {

	public ScoreSpan {
		if (until != null && !until.isAfter(from)) {
			throw new IllegalArgumentException("until must be after " + from + ", was " + until);
		}
		if ((until == null) != (ended == null)) {
			throw new IllegalArgumentException("A span has a reason exactly when it has ended");
		}
	}

	/**
	 * Whether the span holds on the day.
	 */
	public boolean covers(LocalDate day) {
		return !day.isBefore(this.from) && (this.until == null || day.isBefore(this.until));
	}

	/**
	 * Why a score span ended.
	 */
	public enum Ended {

		REMEASURED("remeasured"), SEEN("seen"), DAMAGED("damaged"), DIED("died"), FELL("fell"), REMOVED("removed"),

		/** A stem ruling let the measurement count no longer. */
		RULED("ruled");

		private final String word;

		Ended(String word) {
			this.word = word;
		}

		/**
		 * The word used in answers and records.
		 */
		public String word() {
			return this.word;
		}

	}

}

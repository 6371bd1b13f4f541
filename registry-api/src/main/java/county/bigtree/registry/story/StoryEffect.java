package county.bigtree.registry.story;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

import county.bigtree.registry.standing.BookKey;
import org.jspecify.annotations.Nullable;

/**
 * A change of a tree's score, place or title.
 *
 * @param at when the register recognised it
 * @param book in which ranking
 * @param before the points before, where there were any
 * @param points the points after, where there are any
 * @param from for a score of the past: its first day
 * @param until for a score of the past: the day after its last
 * @param earlierTitle the title before, or null
 * @param title the title after, or null
 * @param reason why, in the words of the title history
 */
public record StoryEffect(Kind kind, Instant at, BookKey book, UUID tree, String tag, @Nullable BigDecimal before,
		@Nullable BigDecimal points, @Nullable LocalDate from, @Nullable LocalDate until, @Nullable String earlierTitle,
		@Nullable String title, @Nullable String reason) {

	/**
	 * The same with the tree called so.
	 */
	StoryEffect named(String called) {
		return new StoryEffect(this.kind, this.at, this.book, this.tree, called, this.before, this.points, this.from,
				this.until, this.earlierTitle, this.title, this.reason);
	}

	static StoryEffect ofScore(Kind kind, Instant at, ScoreLine line, @Nullable BigDecimal before,
			@Nullable BigDecimal points, @Nullable String reason) {
		return new StoryEffect(kind, at, line.book(), line.tree(), line.tag(), before, points, null, null, null, null,
				reason);
	}

	static StoryEffect ofPast(Kind kind, Instant at, ScoreLine line, @Nullable String reason) {
		return new StoryEffect(kind, at, line.book(), line.tree(), line.tag(), null, line.points(), line.effectiveOn(),
				line.endsOn(), null, null, reason);
	}

	static StoryEffect ofPlace(Kind kind, Instant at, BookKey book, UUID tree, String tag) {
		return new StoryEffect(kind, at, book, tree, tag, null, null, null, null, null, null, null);
	}

	static StoryEffect ofTitle(Instant at, BookKey book, UUID tree, String tag, @Nullable String earlier,
			@Nullable String title, String reason) {
		Kind kind = (earlier == null) ? Kind.TITLE_BEGAN : (title == null) ? Kind.TITLE_ENDED : Kind.TITLE_CHANGED;
		return new StoryEffect(kind, at, book, tree, tag, null, null, null, null, earlier, title, reason);
	}

	/**
	 * What changed, in the order in which it is told.
	 */
	public enum Kind {

		SCORE_ENDED("score-ended"), SCORE_BEGAN("score-began"), SCORE_CHANGED("score-changed"),

		/** A score withdrawn that had ended before the day of recording. */
		PAST_SCORE_WITHDRAWN("past-score-withdrawn"),

		/** A score that had ended before the day of recording. */
		PAST_SCORE("past-score"),

		FIRST_PLACE_LOST("first-place-lost"), FIRST_PLACE_TAKEN("first-place-taken"),

		/** First place held with others. */
		FIRST_PLACE_SHARED("first-place-shared"),

		TITLE_ENDED("title-ended"), TITLE_CHANGED("title-changed"), TITLE_BEGAN("title-began");

		private final String code;

		Kind(String code) {
			this.code = code;
		}

		/**
		 * The word used in answers.
		 */
		public String code() {
			return this.code;
		}

	}

}

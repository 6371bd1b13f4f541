package county.bigtree.registry.story;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Predicate;

import county.bigtree.registry.story.StoryEffect.Kind;
import org.jspecify.annotations.Nullable;

/**
 * How the scores of one tree in one ranking change at an instant. A row that is written
 * again only since the tree was seen, or ends on another day, is no change.
 */
final class ScoreChanges {

	private ScoreChanges() {
	}

	/**
	 * The changes at the instant.
	 * @param lines all lines of the tree in the ranking, of all times
	 */
	static List<StoryEffect> at(Instant at, List<ScoreLine> lines) {
		List<StoryEffect> effects = new ArrayList<>();
		ScoreLine before = first(lines, (line) -> line.presentBefore(at));
		ScoreLine after = first(lines, (line) -> line.presentAt(at));
		if (before == null && after != null) {
			effects.add(StoryEffect.ofScore(Kind.SCORE_BEGAN, at, after, null, after.points(), null));
		}
		else if (before != null && after == null) {
			effects.add(StoryEffect.ofScore(Kind.SCORE_ENDED, at, before, before.points(), null, whyLeft(before, at)));
		}
		else if (before != null && after != null && differ(before.points(), after.points())) {
			effects.add(StoryEffect.ofScore(Kind.SCORE_CHANGED, at, after, before.points(), after.points(), null));
		}
		effects.addAll(past(at, lines));
		return effects;
	}

	private static List<StoryEffect> past(Instant at, List<ScoreLine> lines) {
		List<StoryEffect> effects = new ArrayList<>();
		lines.stream()
			.filter((line) -> at.equals(line.withdrawnAt()) && line.endsOn() != null && !at.equals(line.closedAt()))
			.filter((line) -> lines.stream()
				.noneMatch((other) -> other.recordedAt().equals(at) && sameFigures(line, other)))
			.forEach((line) -> effects.add(StoryEffect.ofPast(Kind.PAST_SCORE_WITHDRAWN, at, line, line.withdrawn())));
		lines.stream()
			.filter((line) -> line.recordedAt().equals(at) && line.ofThePast())
			.filter((line) -> lines.stream()
				.noneMatch((other) -> other.recordedAt().isBefore(at) && !other.withdrawnBefore(at)
						&& sameFigures(line, other)))
			.forEach((line) -> effects.add(StoryEffect.ofPast(Kind.PAST_SCORE, at, line, line.ended())));
		return effects;
	}

	private static boolean sameFigures(ScoreLine one, ScoreLine other) {
		return one.measurement().equals(other.measurement()) && !differ(one.points(), other.points());
	}

	private static boolean differ(BigDecimal one, BigDecimal other) {
		return one.compareTo(other) != 0;
	}

	private static @Nullable String whyLeft(ScoreLine line, Instant at) {
		return at.equals(line.withdrawnAt()) ? line.withdrawn() : Objects.requireNonNull(line.ended());
	}

	private static @Nullable ScoreLine first(List<ScoreLine> lines, Predicate<ScoreLine> wanted) {
		return lines.stream().filter(wanted).findFirst().orElse(null);
	}

}

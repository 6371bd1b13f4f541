package county.bigtree.registry.story;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import county.bigtree.registry.standing.BookKey;
import county.bigtree.registry.story.StoryEffect.Kind;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Worked by hand: no outside source.
 */
class ScoreChangesTest {

	private static final BookKey BOOK = new BookKey("larkmere", "quercus-alba");

	private static final UUID TREE = new UUID(0, 1);

	private static final LocalDate EARLY = LocalDate.parse("2015-05-01");

	private static final LocalDate MIDDLE = LocalDate.parse("2018-05-01");

	private static final LocalDate LATE = LocalDate.parse("2021-05-01");

	@Test
	void aRemeasurementChangesTheScore() {
		List<ScoreLine> lines = List.of(closed(1, "180", EARLY, LATE, 1, 2, null), open(2, "190", LATE, 2, null));
		assertThat(ScoreChanges.at(at(1), lines)).singleElement()
			.returns(Kind.SCORE_BEGAN, StoryEffect::kind)
			.returns(new BigDecimal("180"), StoryEffect::points);
		assertThat(ScoreChanges.at(at(2), lines)).singleElement()
			.returns(Kind.SCORE_CHANGED, StoryEffect::kind)
			.returns(new BigDecimal("180"), StoryEffect::before)
			.returns(new BigDecimal("190"), StoryEffect::points);
	}

	@Test
	void aWithdrawalEndsIt() {
		assertThat(ScoreChanges.at(at(2), List.of(open(1, "180", EARLY, 1, 2)))).singleElement()
			.returns(Kind.SCORE_ENDED, StoryEffect::kind)
			.returns("revoked", StoryEffect::reason);
	}

	@Test
	void aLateFilingChangesWhatIsKnownOfThePast() {
		List<ScoreLine> lines = List.of(closed(1, "180", EARLY, LATE, 1, 2, 3), open(2, "190", LATE, 2, null),
				closed(1, "180", EARLY, MIDDLE, 3, 3, null), closed(3, "185", MIDDLE, LATE, 3, 3, null));
		assertThat(ScoreChanges.at(at(3), lines)).singleElement()
			.returns(Kind.PAST_SCORE, StoryEffect::kind)
			.returns(new BigDecimal("185"), StoryEffect::points)
			.returns(MIDDLE, StoryEffect::from)
			.returns(LATE, StoryEffect::until);
	}

	@Test
	void aPastScoreSetAsideNoLongerStands() {
		List<ScoreLine> lines = List.of(closed(1, "180", EARLY, LATE, 1, 2, 3), open(2, "190", LATE, 2, null));
		assertThat(ScoreChanges.at(at(3), lines)).singleElement()
			.returns(Kind.PAST_SCORE_WITHDRAWN, StoryEffect::kind)
			.returns(EARLY, StoryEffect::from);
	}

	@Test
	void aSightingChangesNothing() {
		List<ScoreLine> lines = List.of(closed(1, "180", EARLY, MIDDLE, 1, 2, null), open(1, "180", MIDDLE, 2, null));
		assertThat(ScoreChanges.at(at(2), lines)).isEmpty();
	}

	private static ScoreLine open(int measurement, String points, LocalDate from, int recorded,
			@Nullable Integer withdrawn) {
		return new ScoreLine(BOOK, TREE, "LM-0001", new UUID(1, measurement), new BigDecimal(points), from, null, null,
				at(recorded), null, (withdrawn != null) ? at(withdrawn) : null, (withdrawn != null) ? "revoked" : null);
	}

	private static ScoreLine closed(int measurement, String points, LocalDate from, LocalDate until, int recorded,
			int closed, @Nullable Integer withdrawn) {
		return new ScoreLine(BOOK, TREE, "LM-0001", new UUID(1, measurement), new BigDecimal(points), from, until,
				"remeasured", at(recorded), at(closed), (withdrawn != null) ? at(withdrawn) : null,
				(withdrawn != null) ? "set-aside" : null);
	}

	private static Instant at(int second) {
		return Instant.ofEpochSecond(second);
	}

}

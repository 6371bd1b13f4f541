package county.bigtree.domain.standing;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.UUID;

import county.bigtree.domain.measuring.FigureMethods;
import county.bigtree.domain.points.Points;
import county.bigtree.domain.points.Score;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.rulebook.CarryForward;
import county.bigtree.domain.standing.TreeFacts.Found;
import county.bigtree.domain.standing.TreeFacts.Measured;
import county.bigtree.domain.standing.TreeFacts.Ruled;
import county.bigtree.domain.standing.TreeFacts.SignedOff;
import county.bigtree.domain.standing.TreeFacts.Verdict;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The score spans of a tree (rules of this register, no source; each case worked by
 * hand).
 */
class ScoreSpansTest {

	private static final UUID TREE = UUID.randomUUID();

	private final List<Measured> measured = new ArrayList<>();

	private final List<Found> found = new ArrayList<>();

	private final List<Ruled> ruled = new ArrayList<>();

	private int recorded;

	@Test
	void aTreeThatIsNotOnTheBooksHasNone() {
		measure("2020-05-01", 20_000);
		assertThat(ScoreSpans.of(new TreeFacts(TREE, false, this.measured, this.found, this.ruled))).isEmpty();
	}

	@Test
	void eachCountingMeasurementTakesThePlaceOfTheOneBeforeOnItsDay() {
		measure("2020-05-01", 20_000);
		measure("2024-05-01", 21_000);
		assertThat(spans()).containsExactly("200.00 2020-05-01 2024-05-01 remeasured", "210.00 2024-05-01 - -");
	}

	@Test
	void ofTwoOnOneDayTheLaterFiledCounts() {
		measure("2020-05-01", 20_000);
		measure("2020-05-01", 19_000);
		assertThat(spans()).containsExactly("190.00 2020-05-01 - -");
	}

	@Test
	void ofTwoOnOneDayFiledAtOneInstantTheLaterIdCountsHoweverTheyAreListed() {
		Measured one = atOnce(1, 20_000);
		Measured other = atOnce(2, 19_000);
		this.measured.addAll(List.of(one, other));
		assertThat(spans()).containsExactly("190.00 1970-01-01 - -");
		Collections.reverse(this.measured);
		assertThat(spans()).containsExactly("190.00 1970-01-01 - -");
	}

	private static Measured atOnce(long id, int hundredths) {
		return new Measured(new UUID(0, id), LocalDate.EPOCH, Instant.EPOCH, full(hundredths), true, false, null, 0,
				List.of());
	}

	@Test
	void aFallEndsTheScoreOnTheDayItBegan() {
		measure("2020-05-01", 20_000);
		find(Condition.FALLEN, "2021-03-05", "2021-03-01");
		assertThat(spans()).containsExactly("200.00 2020-05-01 2021-03-01 fell");
	}

	@Test
	void notFoundEndsNothing() {
		measure("2020-05-01", 20_000);
		find(Condition.NOT_FOUND, "2021-03-05", "2021-03-05");
		assertThat(spans()).containsExactly("200.00 2020-05-01 - -");
	}

	@Test
	void aSightingAndADamageEachBeginASpan() {
		measure("2020-05-01", 20_000);
		find(Condition.UPRIGHT, "2022-01-01", "2022-01-01");
		find(Condition.DAMAGED, "2023-01-01", "2023-01-01");
		List<ScoreSpan> spans = ScoreSpans.of(facts());
		assertThat(spans()).containsExactly("200.00 2020-05-01 2022-01-01 seen", "200.00 2022-01-01 2023-01-01 damaged",
				"200.00 2023-01-01 - -");
		assertThat(spans.get(1).scored().seenOn()).isEqualTo("2022-01-01");
		assertThat(spans.get(2).scored().lostOn()).isEqualTo("2023-01-01");
	}

	@Test
	void aRemeasurementHealsADamage() {
		measure("2020-05-01", 20_000);
		find(Condition.DAMAGED, "2023-01-01", "2023-01-01");
		measure("2023-02-01", 18_000);
		List<ScoreSpan> spans = ScoreSpans.of(facts());
		assertThat(spans.get(spans.size() - 1).scored().lostOn()).isNull();
	}

	@Test
	void aStemRulingLetsOnlyWhatWasMeasuredSoCountFromItsDay() {
		Measured first = measure("2018-05-01", 15_000);
		measure("2020-05-01", 25_000);
		rule("2021-01-01", Set.of(first.measurement()));
		assertThat(spans()).containsExactly("150.00 2018-05-01 2020-05-01 remeasured",
				"250.00 2020-05-01 2021-01-01 ruled", "150.00 2021-01-01 - -");
		measure("2020-06-01", 16_000);
		assertThat(spans()).last().isEqualTo("160.00 2020-06-01 - -");
	}

	@Test
	void aStemRulingMayLeaveNothingThatCounts() {
		measure("2020-05-01", 25_000);
		rule("2021-01-01", Set.of());
		assertThat(spans()).containsExactly("250.00 2020-05-01 2021-01-01 ruled");
	}

	@Test
	void aVisitWithAGirthAloneGivesNoScoreByDefault() {
		measure("2020-05-01", 20_000);
		girthOnly("2024-05-01", 115, CarryForward.NONE);
		assertThat(spans()).containsExactly("200.00 2020-05-01 - -");
	}

	/**
	 * 115 + 80 + 40 / 4 = 205. Four years of growth up to 1 ft a year: g = 4 / √3 =
	 * 2.3094 ft, so u = √(0.5² + 2² + g² + (3² + g²) / 16) = √10.4792 = 3.2372.
	 */
	@Test
	void aGirthAloneTakesTheLatestHeightAndCrownWhereTheRulesLetIt() {
		Measured first = measure("2020-05-01", 20_000);
		Measured tape = girthOnly("2024-05-01", 115, new CarryForward(5, 4));
		assertThat(spans()).containsExactly("200.00 2020-05-01 2024-05-01 remeasured", "205.00 2024-05-01 - -");
		ScoredTree scored = ScoreSpans.of(facts()).get(1).scored();
		assertThat(scored.measurement()).isEqualTo(tape.measurement());
		assertThat(scored.from()).isEqualTo(new CarriedFrom(first.measurement(), first.measurement()));
		assertThat(scored.score().standardUncertainty()).isEqualTo(3.2372);
	}

	@Test
	void aFigureTooOldIsNotCarried() {
		measure("2020-05-01", 20_000);
		girthOnly("2024-05-02", 115, new CarryForward(5, 4));
		assertThat(spans()).containsExactly("200.00 2020-05-01 - -");
	}

	@Test
	void aFigureFromBeforeADamageIsNotCarried() {
		measure("2020-05-01", 20_000);
		find(Condition.DAMAGED, "2022-01-01", "2022-01-01");
		girthOnly("2022-05-01", 115, new CarryForward(20, 20));
		assertThat(spans()).last().isEqualTo("200.00 2022-01-01 - -");
	}

	@Test
	void whatARulingLeavesOutIsNotCarriedFromItsDay() {
		measure("2018-05-01", 20_000);
		Measured tape = girthOnly("2020-05-01", 115, new CarryForward(20, 20));
		rule("2021-01-01", Set.of(tape.measurement()));
		assertThat(spans()).containsExactly("200.00 2018-05-01 2020-05-01 remeasured",
				"205.00 2020-05-01 2021-01-01 ruled");
	}

	@Test
	void aVerifiersFiguresThatLackOneCountForNothing() {
		SignedOff partly = new SignedOff(Verdict.CONFIRMED, false, false, false);
		Measured one = girthOnly("2020-05-01", 115, CarryForward.NONE);
		assertThat(new Measured(one.measurement(), one.measuredOn(), one.filedAt(), one.figures(), false, false, partly,
				0, List.of())
			.counts()).isFalse();
	}

	@Test
	void whatIsSetAsideNeverCounted() {
		Measured one = measure("2020-05-01", 20_000);
		this.measured.set(0, new Measured(one.measurement(), one.measuredOn(), one.filedAt(), one.figures(), false,
				true, null, 1, one.signOffs()));
		assertThat(spans()).isEmpty();
	}

	@Test
	void aFiledMeasurementNeedsItsSignOffsAndNobodyWhoDeniesIt() {
		SignedOff yes = new SignedOff(Verdict.CONFIRMED, false, false, false);
		SignedOff no = new SignedOff(Verdict.NOT_CONFIRMED, false, false, false);
		SignedOff takenBack = new SignedOff(Verdict.NOT_CONFIRMED, false, true, false);
		SignedOff own = new SignedOff(Verdict.CORRECTED, true, true, false);
		assertThat(filed(1).counts()).isFalse();
		assertThat(filed(1, yes).counts()).isTrue();
		assertThat(filed(2, yes).counts()).isFalse();
		assertThat(filed(2, yes, yes).counts()).isTrue();
		assertThat(filed(1, yes, no).counts()).isFalse();
		assertThat(filed(1, yes, takenBack).counts()).isTrue();
		assertThat(filed(1, yes, own).counts()).as("a verifier's own ends it for good").isFalse();
	}

	/** A sign-off that waits for a coordinator's yes does nothing, whatever it says. */
	@Test
	void aSignOffThatWaitsForACoordinatorNeitherCountsNorEndsAClaim() {
		SignedOff yes = new SignedOff(Verdict.CONFIRMED, false, false, false);
		SignedOff waits = new SignedOff(Verdict.CONFIRMED, false, false, true);
		SignedOff no = new SignedOff(Verdict.NOT_CONFIRMED, false, false, true);
		SignedOff own = new SignedOff(Verdict.CORRECTED, true, false, true);
		assertThat(filed(1, waits).counts()).isFalse();
		assertThat(filed(2, yes, waits).counts()).isFalse();
		assertThat(filed(1, yes, no, own).counts()).isTrue();
		Measured one = filed(0);
		assertThat(new Measured(one.measurement(), one.measuredOn(), one.filedAt(), one.figures(), false, false, own, 0,
				List.of())
			.counts()).isFalse();
	}

	/**
	 * 80 ft high, 40 ft across, and girth enough for the points.
	 */
	private static VisitFigures full(int hundredths) {
		return new VisitFigures(new Estimate(hundredths / 100.0 - 90, 0.5), new Estimate(80, 2), new Estimate(40, 3),
				new Score(Points.ofHundredths(hundredths), 1), CarryForward.NONE, FigureMethods.UNTOLD);
	}

	private Measured filed(int required, SignedOff... signOffs) {
		return new Measured(UUID.randomUUID(), LocalDate.EPOCH, Instant.EPOCH, full(1), false, false, null, required,
				List.of(signOffs));
	}

	private Measured measure(String day, int hundredths) {
		Measured one = new Measured(UUID.randomUUID(), LocalDate.parse(day), Instant.ofEpochSecond(this.recorded++),
				full(hundredths), false, false, null, 1,
				List.of(new SignedOff(Verdict.CONFIRMED, false, false, false)));
		this.measured.add(one);
		return one;
	}

	private Measured girthOnly(String day, double inches, CarryForward carries) {
		Measured one = new Measured(UUID.randomUUID(), LocalDate.parse(day), Instant.ofEpochSecond(this.recorded++),
				new VisitFigures(new Estimate(inches, 0.5), null, null, null, carries, FigureMethods.UNTOLD), false,
				false, null, 1, List.of(new SignedOff(Verdict.CONFIRMED, false, false, false)));
		this.measured.add(one);
		return one;
	}

	private void find(Condition condition, String observed, String from) {
		this.found.add(new Found(condition, LocalDate.parse(observed), LocalDate.parse(from),
				Instant.ofEpochSecond(this.recorded++)));
	}

	private void rule(String from, Set<UUID> kept) {
		this.ruled.add(new Ruled(LocalDate.parse(from), Instant.ofEpochSecond(this.recorded++), kept));
	}

	private TreeFacts facts() {
		return new TreeFacts(TREE, true, this.measured, this.found, this.ruled);
	}

	private List<String> spans() {
		return ScoreSpans.of(facts())
			.stream()
			.map((span) -> "%s %s %s %s".formatted(span.scored().score().points().toBigDecimal(), span.from(),
					(span.until() != null) ? span.until() : "-", (span.ended() != null) ? span.ended().word() : "-"))
			.toList();
	}

}

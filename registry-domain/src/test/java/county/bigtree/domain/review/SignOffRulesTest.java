package county.bigtree.domain.review;

import java.util.Optional;
import java.util.Set;
import java.util.UUID;

import county.bigtree.domain.measuring.Reduced;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.review.Refusal.Ground;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

class SignOffRulesTest {

	private static final PersonId FINDER = person(1);

	private static final PersonId MEASURER = person(2);

	private static final PersonId OWNER = person(3);

	private static final PersonId STRANGER = person(4);

	private static final Interested INTERESTED = new Interested(FINDER, Set.of(MEASURER), Set.of(OWNER));

	private static final Reduced FILED = reduced(150.0, 90.0, 60.0);

	@Test
	void nobodyJudgesWhatIsTheirs() {
		assertThat(detail(SignOffRules.maySign(FINDER, INTERESTED, Set.of()))).contains("nominated");
		assertThat(detail(SignOffRules.maySign(MEASURER, INTERESTED, Set.of()))).contains("took");
		assertThat(detail(SignOffRules.maySign(OWNER, INTERESTED, Set.of()))).contains("own");
		assertThat(SignOffRules.maySign(STRANGER, INTERESTED, Set.of(person(5)))).isEmpty();
		assertThat(SignOffRules.maySign(STRANGER, new Interested(null, Set.of(), Set.of()), Set.of())).isEmpty();
	}

	@Test
	void nobodySignsTwice() {
		Optional<Refusal> refusal = SignOffRules.maySign(STRANGER, INTERESTED, Set.of(STRANGER));
		assertThat(refusal.map(Refusal::ground)).contains(Ground.NOT_NOW);
	}

	@Test
	void aCorrectionBringsAFullMeasurement() {
		assertThat(stands(Verdict.CORRECTED, null, false)).contains("full measurement");
		assertThat(stands(Verdict.CORRECTED, reduced(150.0, null, 60.0), false)).contains("full measurement");
		assertThat(stands(Verdict.CORRECTED, reduced(200.0, 50.0, 20.0), false)).isEmpty();
	}

	@Test
	void aConfirmationLiesWithinTheTolerances() {
		assertThat(stands(Verdict.CONFIRMED, reduced(150.0, 90.0, 60.0), false)).isEmpty();
		assertThat(stands(Verdict.CONFIRMED, reduced(148.0, null, null), false))
			.startsWith("The filed girth of 150 in differs from yours of 148 in by 2 in: more than 1.48 in.")
			.endsWith("choose corrected or not-confirmed.");
		assertThat(stands(Verdict.CONFIRMED, reduced(null, 80.0, null), false)).contains("filed height");
		assertThat(stands(Verdict.CONFIRMED, reduced(null, null, 50.0), false)).contains("filed crown");
		assertThat(stands(Verdict.NOT_CONFIRMED, reduced(148.0, 80.0, 50.0), false)).isEmpty();
		assertThat(stands(Verdict.CONFIRMED, null, false)).isEmpty();
	}

	@ParameterizedTest
	@EnumSource(names = "NOT_CONFIRMED", mode = EnumSource.Mode.EXCLUDE)
	void theCountyMayAskForOwnReadingsOfAllThatWasFiled(Verdict verdict) {
		assertThat(stands(verdict, null, true)).contains("of your own");
		assertThat(stands(verdict, reduced(150.0, null, null), true)).endsWith("lacks height and crown spread.");
		assertThat(stands(verdict, FILED, true)).isEmpty();
	}

	@Test
	void whoeverFoundNoTreeNeedsNoReadings() {
		assertThat(stands(Verdict.NOT_CONFIRMED, null, true)).isEmpty();
	}

	/**
	 * Forest Inventory and Analysis core field guide, 5.9.2 (from memory): 0.1 in for
	 * each begun 20 in of diameter; on the girth π times as much.
	 */
	@ParameterizedTest
	@CsvSource({ "12, 0.3142", "20, 0.3142", "20.1, 0.6283", "36, 0.6283", "41, 0.9425", "60, 0.9425",
			"76.394, 1.2566" })
	void theRoundStemToleranceGrowsInSteps(double diameter, double tolerance) {
		assertThat(Tolerances.STANDARD.roundStemInches(diameter)).isCloseTo(tolerance, within(1e-4));
	}

	/**
	 * Lines of the standard tolerances, both sides: 1 %, 10 %, and the larger of 10 % and
	 * 4 ft.
	 */
	@ParameterizedTest
	@CsvSource({ "151.5, 150, , , , , true", "151.6, 150, , , , , false", "20.3, 20, , , , , true",
			"20.4, 20, , , , , false", ", , 99, 90, , , true", ", , 66.33, 60.3, , , true", ", , 81, 90, , , true",
			", , 99.1, 90, , , false", ", , , , 34, 30, true", ", , , , 34.1, 30, false", ", , , , 66, 60, true",
			", , , , 66.1, 60, false", ", , , , 54, 60, true", "150, , 90, , 60, , true" })
	void agreementIsInclusive(@Nullable Double girth, @Nullable Double checkedGirth, @Nullable Double height,
			@Nullable Double checkedHeight, @Nullable Double crown, @Nullable Double checkedCrown, boolean holds) {
		Agreement agreement = Agreement.between(reduced(girth, height, crown),
				reduced(checkedGirth, checkedHeight, checkedCrown), Tolerances.STANDARD, VisitsApart.NOT_AT_ALL);
		assertThat(agreement.holds()).isEqualTo(holds);
	}

	@Test
	void tolerancesAreTheRulebooksToSet() {
		Tolerances strict = new Tolerances(0, 0, 0.01, 0.01, 0);
		assertThat(confirmed(reduced(150.0, 89.0, 60.0), strict, VisitsApart.NOT_AT_ALL)).isNotEmpty();
		assertThat(confirmed(reduced(150.0, 89.5, 60.0), strict, VisitsApart.NOT_AT_ALL)).isEmpty();
	}

	/**
	 * Eight years at rings of 0.15 in: 2 π × 0.15 × 8 = 7.5398 in of girth, and 8 ft of
	 * height at a foot a year; worked by hand. The tolerance of 158.5 in is 1.585 in.
	 */
	@Test
	void aConfirmationAllowsForGrowthBetweenTheVisits() {
		VisitsApart later = new VisitsApart(8, 0.15, 1);
		VisitsApart earlier = new VisitsApart(-8, 0.15, 1);
		assertThat(confirmed(reduced(158.5, 98.0, 60.0), Tolerances.STANDARD, later)).isEmpty();
		assertThat(confirmed(reduced(158.5, 98.0, 60.0), Tolerances.STANDARD, earlier)).isNotEmpty();
		assertThat(confirmed(reduced(141.5, 82.0, 60.0), Tolerances.STANDARD, earlier)).isEmpty();
		assertThat(confirmed(reduced(141.5, 82.0, 60.0), Tolerances.STANDARD, later)).isNotEmpty();
		assertThat(confirmed(reduced(160.0, 90.0, 60.0), Tolerances.STANDARD, later))
			.startsWith("The filed girth of 150 in differs from yours of 160 in by 10 in, "
					+ "of which growth between the visits explains all but 2.46 in: more than 1.6 in.");
	}

	private static String confirmed(Reduced own, Tolerances tolerances, VisitsApart apart) {
		return SignOffRules
			.verdictStands(Verdict.CONFIRMED, FILED, own, false, Agreement.between(FILED, own, tolerances, apart))
			.map(Refusal::detail)
			.orElse("");
	}

	private static String stands(Verdict verdict, @Nullable Reduced own, boolean required) {
		Agreement agreement = (own == null) ? Agreement.NOTHING_COMPARED
				: Agreement.between(FILED, own, Tolerances.STANDARD, VisitsApart.NOT_AT_ALL);
		return SignOffRules.verdictStands(verdict, FILED, own, required, agreement).map(Refusal::detail).orElse("");
	}

	private static String detail(Optional<Refusal> refusal) {
		assertThat(refusal.orElseThrow().ground()).isEqualTo(Ground.NOT_YOURS);
		return refusal.orElseThrow().detail();
	}

	private static Reduced reduced(@Nullable Double girth, @Nullable Double height, @Nullable Double crown) {
		return new Reduced(Reduced.VERSION, estimate(girth), estimate(height), estimate(crown));
	}

	private static @Nullable Estimate estimate(@Nullable Double value) {
		return (value == null) ? null : Estimate.exact(value);
	}

	private static PersonId person(int number) {
		return new PersonId(new UUID(0, number));
	}

}

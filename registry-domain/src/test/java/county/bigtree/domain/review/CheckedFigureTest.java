package county.bigtree.domain.review;

import county.bigtree.domain.measuring.Combination;
import county.bigtree.domain.measuring.Kind;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.InvalidReadingException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

/**
 * Tolerances are those of the Forest Inventory and Analysis core field guide, 5.9.2 and
 * 5.14, from memory; E_n is that of ISO 13528:2015, from memory. Worked by hand.
 */
class CheckedFigureTest {

	private static final Tolerances ROUND_STEMS = new Tolerances(0.1, 0, 0.1, 0.1, 4);

	@ParameterizedTest
	@CsvSource({ "GIRTH, 150.0, 0.5, 151.2, 0.5, LOOK_AGAIN", "GIRTH, 150.0, 0.5, 150.9, 0.5, AGREES",
			"GIRTH, 150.0, 0, 150.9, 0.5, AGREES", "GIRTH, 150.0, 0, 151.2, 0.5, DISAGREES",
			"GIRTH, 150.0, 0.5, 160, 0.5, DISAGREES", "HEIGHT, 98, 2.5, 91, 1.5, LOOK_AGAIN",
			"HEIGHT, 98, 1.5, 91, 1.5, LOOK_AGAIN", "HEIGHT, 98, 2.5, 88, 1.5, DISAGREES",
			"HEIGHT, 98, 2.5, 93, 1.5, AGREES", "CROWN, 60, 2, 56, 2, AGREES", "CROWN, 60, 1, 50, 1, DISAGREES" })
	void givesAVerdict(Kind kind, double filed, double filedU, double checked, double checkedU, Agreed verdict) {
		assertThat(figure(kind, filed, filedU, checked, checkedU, GrowthWindow.NONE).verdict()).isEqualTo(verdict);
	}

	@Test
	void saysWhy() {
		CheckedFigure height = figure(Kind.HEIGHT, 98, 2.5, 91, 1.5, GrowthWindow.NONE);
		assertThat(height.reasons()).containsExactly("The difference of -7 ft is within the tolerance of 9.1 ft.",
				"The difference is 1.2 times what both uncertainties allow (E_n); they disagree above 1.",
				"Two practised measurers differ by more than 7.315 ft once in twenty times.");
		CheckedFigure crown = figure(Kind.CROWN, 60, 0, 56, 2, GrowthWindow.NONE);
		assertThat(crown.reasons()).containsExactly("The difference of -4 ft is within the tolerance of 5.6 ft.",
				"One side has no uncertainty, so that the tolerance decides alone.");
	}

	/** From 150 in, ten years of rings of 0.2 in at most: up to 162.5664 in. */
	@Test
	void allowsForGrowthBetweenVisits() {
		GrowthWindow decade = GrowthWindow.ofGirth(0.2, 10);
		assertThat(decade.most()).isCloseTo(12.5664, within(1e-4));
		assertThat(figure(Kind.GIRTH, 150, 0.5, 162, 0.5, decade).verdict()).isEqualTo(Agreed.AGREES);
		assertThat(figure(Kind.GIRTH, 150, 0.5, 149.6, 0.5, decade).unexplained()).isZero();
		assertThat(figure(Kind.GIRTH, 150, 0.5, 148, 0.5, decade).verdict()).isEqualTo(Agreed.DISAGREES);
		CheckedFigure grown = figure(Kind.GIRTH, 150, 0.5, 170, 0.5, decade);
		assertThat(grown.verdict()).isEqualTo(Agreed.DISAGREES);
		assertThat(grown.reasons().get(0))
			.isEqualTo("Of a difference of 20 in, growth between the visits explains all but 7.434 in.");
		assertThat(GrowthWindow.ofGirth(0.2, 1)).isEqualTo(GrowthWindow.NONE);
		assertThat(GrowthWindow.ofFeet(1.5, 4)).isEqualTo(new GrowthWindow(0, 6));
		assertThat(figure(Kind.HEIGHT, 90, 1, 96, 1, GrowthWindow.ofFeet(1.5, 4)).unexplained()).isZero();
	}

	@Test
	void saysTheVerdictInASentence() {
		assertThat(figure(Kind.GIRTH, 150, 0.5, 150.9, 0.5, GrowthWindow.NONE).sentence())
			.isEqualTo("The filed girth of 150 in and the checked one of 150.9 in agree.");
		assertThat(figure(Kind.CROWN, 60, 1, 50, 1, GrowthWindow.NONE).sentence())
			.isEqualTo("The filed crown spread of 60 ft and the checked one of 50 ft do not agree.");
		assertThat(figure(Kind.HEIGHT, 98, 2.5, 91, 1.5, GrowthWindow.NONE).sentence())
			.endsWith("within the tolerance, but farther apart than their uncertainties let one expect: look again.");
		assertThat(figure(Kind.GIRTH, 150, 0.5, 151.2, 0.5, GrowthWindow.NONE).sentence())
			.endsWith("let one expect, but beyond the tolerance: look again.");
	}

	/**
	 * 98 ± 2.5 and 93 ± 1.5: weights 0.16 and 0.4444, mean 94.3235, u 1.2863, χ² =
	 * (3.6765 / 2.5)² + (1.3235 / 1.5)² = 2.9412, Birge 1.715, widened 2.2059; by hand.
	 */
	@Test
	void combinesWhatAgreesAndIsOfOneTime() {
		Combination combined = figure(Kind.HEIGHT, 98, 2.5, 93, 1.5, GrowthWindow.NONE).combined();
		assertThat(combined).isNotNull();
		assertThat(combined.mean().value()).isCloseTo(94.3235, within(1e-4));
		assertThat(combined.mean().standardUncertainty()).isCloseTo(2.2059, within(1e-4));
		assertThat(figure(Kind.HEIGHT, 98, 2.5, 91, 1.5, GrowthWindow.NONE).combined()).isNull();
		assertThat(figure(Kind.HEIGHT, 98, 0, 93, 1.5, GrowthWindow.NONE).combined()).isNull();
		assertThat(figure(Kind.HEIGHT, 92, 1, 93, 1, GrowthWindow.ofFeet(1, 4)).combined()).isNull();
	}

	/**
	 * 2.7718 standard deviations (ISO 5725-6:1994, from memory): 0.5 m of height 4.5469
	 * ft, 0.3 cm of diameter 1.0285 in of girth, 2.9 % 8.0382 %.
	 */
	@Test
	void knowsHowFarPractisedMeasurersDiffer() {
		assertThat(RepeatabilityLimit.of(1)).isCloseTo(2.7718, within(1e-4));
		assertThat(RepeatabilityLimit.of(Kind.HEIGHT, 20)).isCloseTo(4.5469, within(1e-4));
		assertThat(RepeatabilityLimit.of(Kind.HEIGHT, 100)).isCloseTo(8.0382, within(1e-4));
		assertThat(RepeatabilityLimit.of(Kind.GIRTH, 20)).isCloseTo(1.0285, within(1e-4));
		assertThat(RepeatabilityLimit.of(Kind.GIRTH, 100)).isCloseTo(4.1577, within(1e-4));
		assertThat(RepeatabilityLimit.of(Kind.CROWN, 60)).isNull();
	}

	@Test
	void theTwoTestsAgainstAPublishedTolerance() {
		CheckedFigure girth = figure(Kind.GIRTH, 150, 0.5, 151.2, 0.5, GrowthWindow.NONE);
		assertThat(girth.tolerance()).isCloseTo(0.9425, within(1e-4));
		assertThat(girth.enScore()).isCloseTo(0.8485, within(1e-4));
		assertThat(figure(Kind.HEIGHT, 98, 2.5, 91, 1.5, GrowthWindow.NONE).enScore()).isCloseTo(-1.2005, within(1e-4));
	}

	@Test
	void refusesWindowsThatAreNone() {
		assertThatExceptionOfType(InvalidReadingException.class).isThrownBy(() -> new GrowthWindow(1, 0));
		assertThatExceptionOfType(InvalidReadingException.class).isThrownBy(() -> GrowthWindow.ofGirth(-0.1, 3));
	}

	private static CheckedFigure figure(Kind kind, double filed, double filedU, double checked, double checkedU,
			GrowthWindow growth) {
		return CheckedFigure.of(kind, new Estimate(filed, filedU), new Estimate(checked, checkedU), ROUND_STEMS,
				growth);
	}

}

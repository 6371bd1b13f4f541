package county.bigtree.domain.check;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

import county.bigtree.domain.quantity.Estimate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static county.bigtree.domain.check.FiledTrees.TODAY;
import static county.bigtree.domain.check.FiledTrees.WHITE_OAK;
import static county.bigtree.domain.check.FiledTrees.figures;
import static county.bigtree.domain.check.FiledTrees.find;
import static county.bigtree.domain.check.FiledTrees.nothing;
import static org.assertj.core.api.Assertions.assertThat;

/**
 * Expected sizes are those of the table; a white oak of 100 in is about 60 ft high and as
 * wide.
 */
class FiguresChecksTest {

	@Test
	void asksNothingAboutAnOrdinaryTree() {
		assertThat(Checks.on(figures(WHITE_OAK, 100, 65, 60), nothing())).isEmpty();
	}

	@ParameterizedTest
	@CsvSource({ "152, 45, 38, girth, cm", "31.5, 75, 70, girth, in", "23, 65, 60, girth, diameter",
			"100, 19.8, 60, height, m", "100, 213, 60, height, ft", "100, 65, 18.3, crown, m",
			"100, 65, 197, crown, ft" })
	void proposesTheUnitInWhichTheFiguresFit(double girth, double height, double spread, String figure, String unit) {
		Finding finding = find("unit-slip", figures("Quercus rubra", girth, height, spread), nothing()).orElseThrow();
		assertThat(finding.severity()).isEqualTo(Severity.QUESTION);
		assertThat(finding.figures()).containsEntry("figure", figure);
		assertThat(finding.figures().get("proposedUnit") + " " + finding.figures().get("alsoPossible")).contains(unit);
	}

	@Test
	void tellsWhatTheFigureWouldBeInTheOtherUnit() {
		Finding finding = find("unit-slip", figures(WHITE_OAK, 100, 19.8, 60), nothing()).orElseThrow();
		assertThat(finding.detail()).contains("the height was read in metres and entered as feet", "a height of 65 ft");
		assertThat(finding.figures()).containsEntry("proposedHeightFeet", 64.96);
	}

	@Test
	void saysOneThingOfOneSlip() {
		assertThat(find("odd-proportions", figures(WHITE_OAK, 100, 19.8, 60), nothing())).isEmpty();
	}

	@Test
	void asksAboutProportionsThatNoUnitExplains() {
		Finding finding = find("odd-proportions", figures(WHITE_OAK, 100, 25, 160), nothing()).orElseThrow();
		assertThat(finding.severity()).isEqualTo(Severity.QUESTION);
		assertThat(finding.detail()).contains("100 in", "Quercus alba");
	}

	@Test
	void comparesWhatThereIsWhenTheCrownIsMissing() {
		Sizes noCrown = new Sizes(Estimate.exact(100), Estimate.exact(9), null);
		assertThat(find("unit-slip", Filed.figures(WHITE_OAK, noCrown, TODAY), nothing())).isPresent();
	}

	@Test
	void hasNothingToCompareAGirthAloneWith() {
		Sizes girthAlone = new Sizes(Estimate.exact(100), null, null);
		assertThat(Checks.on(Filed.figures(WHITE_OAK, girthAlone, TODAY), nothing())).isEmpty();
	}

	@Test
	void comparesACountyWithItsOwnTrees() {
		List<CountyForm.Grown> low = new ArrayList<>();
		for (int i = 0; i < 40; i++) {
			low.add(new CountyForm.Grown(WHITE_OAK, 80 + i, 30, 50));
		}
		Filed filed = figures(WHITE_OAK, 100, 31, 50);
		Known here = Known.onlyForm(CountyForm.of(low));
		assertThat(find("odd-proportions", filed, here)).isEmpty();
		assertThat(find("unit-slip", figures(WHITE_OAK, 100, 90, 50), here)).isPresent();
	}

	@ParameterizedTest
	@CsvSource({ "37.8, 90.5, true", "37.8, 89.5, false", "7, 28, true", "7, 27, false", "1.5, 8, false" })
	void asksAboutStemsMoreSlenderThanStand(double girth, double height, boolean asked) {
		assertThat(find("too-slender", figures(WHITE_OAK, girth, height, 20), nothing()).isPresent()).isEqualTo(asked);
	}

	@Test
	void leavesPalmsSlender() {
		assertThat(find("too-slender", figures("Washingtonia robusta", 40, 100, 12), nothing())).isEmpty();
	}

	/** 117.9 ft for a diameter of 12 in, by the formula of Greenhill 1881. */
	@ParameterizedTest
	@CsvSource({ "118.5, true", "117.5, false" })
	void asksAboutHeightsAtWhichAPoleBends(double height, boolean asked) {
		assertThat(find("near-buckling", figures(WHITE_OAK, Math.PI * 12, height, 20), nothing()).isPresent())
			.isEqualTo(asked);
	}

	@Test
	void notesAVeryStoutStem() {
		Finding finding = find("very-stout", figures(WHITE_OAK, 300, 60, 80), nothing()).orElseThrow();
		assertThat(finding.severity()).isEqualTo(Severity.NOTE);
		assertThat(finding.figures()).containsEntry("slenderness", 7.54);
	}

	/** Limits of the table: 150 ft and 96 in for white oak. */
	@ParameterizedTest
	@CsvSource({ "200, 158, true", "200, 157, false", "332, 100, true", "331, 100, false" })
	void asksAboutWhatIsBeyondThePublishedLargest(double girth, double height, boolean asked) {
		assertThat(find("beyond-species-limit", figures(WHITE_OAK, girth, height, 90), nothing()).isPresent())
			.isEqualTo(asked);
	}

	@Test
	void neverStopsTheExtraordinary() {
		List<Finding> findings = Checks.on(figures(WHITE_OAK, 900, 400, 300), nothing());
		assertThat(findings).isNotEmpty().noneMatch((finding) -> finding.severity() == Severity.STOP);
		assertThat(findings).anyMatch(Finding::extraordinary);
	}

	@Test
	void asksAboutATreeBiggerByFarThanAnyOnTheBooks() {
		List<CountyForm.Grown> small = new ArrayList<>();
		for (int i = 0; i < 5; i++) {
			small.add(new CountyForm.Grown("Malus pumila", 40, 22, 24));
		}
		Known known = Known.onlyForm(CountyForm.of(small));
		Finding finding = find("biggest-by-far", figures("Malus pumila", 57, 26, 28), known).orElseThrow();
		assertThat(finding.extraordinary()).isTrue();
		assertThat(find("biggest-by-far", figures("Malus pumila", 56, 26, 28), known)).isEmpty();
		assertThat(find("biggest-by-far", figures("Malus pumila", 57, 26, 28),
				Known.onlyForm(CountyForm.of(small.subList(1, 5)))))
			.isEmpty();
	}

	@Test
	void comparesHeightsMoreStrictlyThanGirths() {
		Known known = Known
			.onlyForm(CountyForm.of(Collections.nCopies(5, new CountyForm.Grown("Malus pumila", 40, 20, 24))));
		assertThat(find("biggest-by-far", figures("Malus pumila", 40, 27, 24), known)).isPresent();
		assertThat(find("biggest-by-far", figures("Malus pumila", 54, 20, 24), known)).isEmpty();
	}

	/** Trees that differ by a fifth up and down, and one that is half as high again. */
	@Test
	void takesForUsualWhatIsUsualInTheCounty() {
		Filed filed = figures(WHITE_OAK, 100, 100, 60);
		assertThat(find("odd-proportions", filed, Known.onlyForm(CountyForm.of(oaks(0.05))))).isPresent();
		assertThat(find("odd-proportions", filed, Known.onlyForm(CountyForm.of(oaks(0.5))))).isEmpty();
	}

	private static List<CountyForm.Grown> oaks(double differ) {
		List<CountyForm.Grown> oaks = new ArrayList<>();
		for (int i = 0; i < 200; i++) {
			double factor = 1 + differ * (i % 5 - 2) / 2;
			oaks.add(new CountyForm.Grown((i % 2 == 0) ? WHITE_OAK : "Quercus rubra", 60 + i % 50, 60 * factor, 60));
		}
		return oaks;
	}

	@Test
	void asksAboutASpeciesNewToABookThatHasLongKnownItsSpecies() {
		Known known = Known.onlyForm(CountyForm.of(oaks(0.1)));
		Finding finding = find("new-to-county", figures("Ulmus americana", 100, 65, 60), known).orElseThrow();
		assertThat(finding.severity()).isEqualTo(Severity.QUESTION);
		assertThat(finding.extraordinary()).isTrue();
		assertThat(finding.figures()).containsEntry("treesOnTheBooks", 200.0).containsEntry("expectedNewPercent", 0.5);
		assertThat(find("new-to-county", figures("Quercus rubra", 100, 65, 60), known)).isEmpty();
		assertThat(find("new-to-county", figures("Quercus sp.", 100, 65, 60), known)).isEmpty();
	}

	/** Two of 202 trees are the only one of their species, so one of a hundred is new. */
	@Test
	void asksNothingOfAFirstTreeWhereNewSpeciesTurnUp() {
		List<CountyForm.Grown> trees = oaks(0.1);
		trees.add(new CountyForm.Grown("Malus pumila", 40, 22, 24));
		trees.add(new CountyForm.Grown("Tilia americana", 80, 60, 50));
		Filed elm = figures("Ulmus americana", 100, 65, 60);
		assertThat(find("new-to-county", elm, Known.onlyForm(CountyForm.of(trees)))).isEmpty();
		assertThat(find("new-to-county", elm, Known.onlyForm(CountyForm.of(oaks(0.1).subList(1, 200))))).isEmpty();
	}

	@Test
	void leavesATreeOnTheBooksItsName() {
		Filed elm = figures("Ulmus americana", 100, 65, 60);
		Known known = new Known(new Earlier(Sizes.of(99, 64, 60), TODAY.minusYears(5), null, null), List.of(), null,
				CountyForm.of(oaks(0.1)), true, RulesOfFiling.DEFAULTS, (at, position) -> Double.NaN);
		assertThat(find("new-to-county", elm, known)).isEmpty();
	}

}

package county.bigtree.domain.check;

import java.time.LocalDate;
import java.util.List;

import county.bigtree.domain.measuring.GirthNotes;
import county.bigtree.domain.measuring.Notes;
import county.bigtree.domain.measuring.PoleHeight;
import county.bigtree.domain.measuring.Readings;
import county.bigtree.domain.measuring.SlopeRule;
import county.bigtree.domain.measuring.TapeGirth;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;
import county.bigtree.domain.rulebook.CarryForward;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static county.bigtree.domain.check.FiledTrees.TODAY;
import static county.bigtree.domain.check.FiledTrees.WHITE_OAK;
import static county.bigtree.domain.check.FiledTrees.find;
import static county.bigtree.domain.check.FiledTrees.nothing;
import static org.assertj.core.api.Assertions.assertThat;

/**
 * What depends on the county's rules: common practice of county registers, no source.
 */
class RulesChecksTest {

	private static final String LACKING = "lacking-figure";

	@Test
	void asksAboutWhatAVisitLacksAndSaysThatItGivesNoPoints() {
		Finding finding = find(LACKING, girthAlone(GirthNotes.NONE), nothing()).orElseThrow();
		assertThat(finding.severity()).isEqualTo(Severity.QUESTION);
		assertThat(finding.figures()).containsEntry("lacking", "height and crown spread");
		assertThat(finding.detail()).contains("no height and crown spread", "no points");
	}

	@Test
	void namesTheDaysOfWhatStandsIn() {
		Known known = measuredBefore(LocalDate.of(2022, 5, 1), LocalDate.of(2021, 5, 1), new CarryForward(5, 8));
		assertThat(find(LACKING, girthAlone(GirthNotes.NONE), known).orElseThrow().detail()).contains(
				"gets its points with the height measured on 2022-05-01 and the crown spread measured on 2021-05-01");
	}

	/** The day of these filings is 25 November 2026. */
	@ParameterizedTest
	@CsvSource({ "2021-11-25, true", "2021-11-24, false" })
	void letsAFigureStandInForAsManyYearsAsTheRulesSay(LocalDate heightOn, boolean points) {
		Known known = measuredBefore(heightOn, heightOn, new CarryForward(5, 8));
		assertThat(find(LACKING, girthAlone(GirthNotes.NONE), known).orElseThrow().detail().contains("gets its points"))
			.isEqualTo(points);
	}

	@Test
	void nothingStandsInForAGirthNorForWhatWasLost() {
		Known known = measuredBefore(null, LocalDate.of(2025, 5, 1), new CarryForward(5, 8));
		assertThat(find(LACKING, girthAlone(GirthNotes.NONE), known).orElseThrow().detail()).contains("no points");
		Known whole = measuredBefore(TODAY, TODAY, new CarryForward(5, 8));
		assertThat(find(LACKING, heightAlone(), whole).orElseThrow().detail()).contains("no girth and crown spread",
				"no points");
	}

	@Test
	void asksNothingOfTheFiguresOfAList() {
		assertThat(find(LACKING, Filed.figures(WHITE_OAK, Sizes.NONE, TODAY), nothing())).isEmpty();
	}

	@Test
	void notesMetricBreastHeightAndOtherHeights() {
		Finding metric = find("metric-breast-height", girthAlone(at(130, LengthUnit.CM, null)), nothing())
			.orElseThrow();
		assertThat(metric.severity()).isEqualTo(Severity.NOTE);
		assertThat(metric.figures()).containsEntry("heightAboveGroundFeet", 4.27);
		assertThat(
				find("not-at-breast-height", girthAlone(at(3, LengthUnit.FT, null)), nothing()).orElseThrow().detail())
			.contains("3 ft", "was not said");
		assertThat(find("not-at-breast-height", girthAlone(at(3, LengthUnit.FT, "burl")), nothing()).orElseThrow()
			.detail()).doesNotContain("was not said");
		assertThat(find("not-at-breast-height", girthAlone(at(137, LengthUnit.CM, null)), nothing())).isEmpty();
	}

	@ParameterizedTest
	@CsvSource({ "UPHILL, UPHILL, false", "UPHILL, MIDSLOPE, true", "MIDSLOPE, MIDSLOPE, false",
			"MIDSLOPE, UPHILL, true" })
	void notesBreastHeightTakenFromOtherGroundThanTheRulesSay(SlopeRule taken, SlopeRule county, boolean noted) {
		Known known = ruledBy(new RulesOfFiling(18, true, county, CarryForward.NONE));
		Filed filed = girthAlone(new GirthNotes(null, taken, null, null, null));
		assertThat(find("other-slope-rule", filed, known).isPresent()).isEqualTo(noted);
		assertThat(find("other-slope-rule", girthAlone(GirthNotes.NONE), known)).isEmpty();
	}

	@Test
	void asksAboutASpeciesThatTheCountyDoesNotList() {
		Known known = ruledBy(new RulesOfFiling(18, false, SlopeRule.UPHILL, CarryForward.NONE));
		Finding finding = find("species-not-eligible", girthAlone(GirthNotes.NONE), known).orElseThrow();
		assertThat(finding.severity()).isEqualTo(Severity.QUESTION);
		assertThat(finding.detail()).contains(WHITE_OAK, "will hold no title");
		assertThat(find("species-not-eligible", girthAlone(GirthNotes.NONE), nothing())).isEmpty();
	}

	private static GirthNotes at(double height, LengthUnit unit, @Nullable String placement) {
		return new GirthNotes(Length.of(height, unit), null, placement, null, null);
	}

	private static Filed girthAlone(GirthNotes notes) {
		return filed(new Readings(new TapeGirth(Length.of(100, LengthUnit.IN), notes), null, null));
	}

	private static Filed heightAlone() {
		return filed(new Readings(null, new PoleHeight(Length.of(65, LengthUnit.FT), null, null, Notes.NONE), null));
	}

	private static Filed filed(Readings readings) {
		return new Filed(WHITE_OAK, Sizes.of(readings.reduce()), readings, false, TODAY, TODAY, null);
	}

	private static Known ruledBy(RulesOfFiling rules) {
		return new Known(null, List.of(), null, CountyForm.UNKNOWN, true, rules, (at, position) -> Double.NaN);
	}

	private static Known measuredBefore(@Nullable LocalDate heightOn, @Nullable LocalDate crownOn,
			CarryForward carries) {
		Earlier earlier = new Earlier(Sizes.of(100, 65, 60), LocalDate.of(2022, 5, 1), heightOn, crownOn);
		return new Known(earlier, List.of(), null, CountyForm.UNKNOWN, true, RulesOfFiling.DEFAULTS.carrying(carries),
				(at, position) -> Double.NaN);
	}

}

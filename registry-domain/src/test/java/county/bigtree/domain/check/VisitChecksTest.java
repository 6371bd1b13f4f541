package county.bigtree.domain.check;

import java.time.LocalDate;
import java.util.List;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static county.bigtree.domain.check.FiledTrees.TODAY;
import static county.bigtree.domain.check.FiledTrees.WHITE_OAK;
import static county.bigtree.domain.check.FiledTrees.find;
import static county.bigtree.domain.check.FiledTrees.girth;
import static county.bigtree.domain.check.FiledTrees.measuredBefore;
import static county.bigtree.domain.check.FiledTrees.nothing;
import static county.bigtree.domain.check.FiledTrees.on;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

class VisitChecksTest {

	/** Worked by hand: 150 in, joint uncertainty 0.5 in, ten rings of 0.62 in. */
	@Test
	void opensTheWindowByTapeAndGrowth() {
		GirthWindow window = GirthWindow.between(150, 150, 0.5, 10);
		assertThat(window.least()).isEqualTo(148.5);
		assertThat(window.most()).isCloseTo(189.9557, within(0.0001));
	}

	@ParameterizedTest
	@CsvSource({ "148.4, girth-shrank", "190.0, girth-outgrew" })
	void asksAboutGirthsOutsideTheWindow(double inches, String code) {
		Known before = measuredBefore(150, 0.3, LocalDate.of(2016, 11, 25));
		assertThat(find(code, girth(WHITE_OAK, inches, 0.4, TODAY), before)).get()
			.extracting(Finding::severity)
			.isEqualTo(Severity.QUESTION);
	}

	@ParameterizedTest
	@CsvSource({ "148.6", "150", "189.9" })
	void asksNothingInsideTheWindow(double inches) {
		Known before = measuredBefore(150, 0.3, LocalDate.of(2016, 11, 25));
		assertThat(Checks.on(girth(WHITE_OAK, inches, 0.4, TODAY), before)).isEmpty();
	}

	@Test
	void asksAboutADayBeforeTheVisitOnTheBooks() {
		Finding finding = find("before-earlier-visit", on(LocalDate.of(2020, 5, 1)),
				measuredBefore(150, 0.3, LocalDate.of(2020, 5, 2)))
			.orElseThrow();
		assertThat(finding.severity()).isEqualTo(Severity.QUESTION);
		assertThat(finding.figures()).containsEntry("earlierMeasuredOn", "2020-05-02");
	}

	@Test
	void stopsADayThatHasNotBeen() {
		assertThat(find("future-day", on(TODAY.plusDays(1)), nothing())).get()
			.extracting(Finding::severity)
			.isEqualTo(Severity.STOP);
		assertThat(find("future-day", on(TODAY), nothing())).isEmpty();
	}

	@ParameterizedTest
	@CsvSource({ "2025-05-25, false", "2025-05-24, true" })
	void notesWhatIsFiledLongAfterItsDay(LocalDate day, boolean late) {
		assertThat(find("filed-late", on(day), nothing()).isPresent()).isEqualTo(late);
	}

	@Test
	void asksNothingOfAFilingWithoutADay() {
		assertThat(Checks.on(on(null), nothing())).isEmpty();
	}

	@Test
	void asksAboutATreeThatWasRuledNotEligible() {
		Known known = new Known(null, List.of(), null, CountyForm.UNKNOWN, false, RulesOfFiling.DEFAULTS,
				(at, position) -> Double.NaN);
		assertThat(find("not-eligible", on(TODAY), known)).isPresent();
	}

}

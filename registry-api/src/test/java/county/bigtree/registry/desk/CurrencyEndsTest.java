package county.bigtree.registry.desk;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Optional;

import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.rulebook.Rulebooks;
import county.bigtree.registry.rules.CountyRules;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Worked by hand: a measurement of 10 May 2020 that is current for n years is so through
 * 10 May of the year 2020 + n.
 */
class CurrencyEndsTest {

	private static final LocalDate MEASURED = LocalDate.of(2020, 5, 10);

	private static final LocalDate TODAY = LocalDate.of(2026, 1, 1);

	private static final Instant NOW = Instant.parse("2026-01-01T12:00:00Z");

	private static final LocalDate NEXT_YEAR = LocalDate.of(2027, 1, 1);

	private static final LocalDate MARCH = LocalDate.of(2026, 3, 1);

	@Test
	void isTheLastDayOfItsYears() {
		assertThat(end(NEXT_YEAR, years(Rulebook.BEGINNING, 6))).contains(LocalDate.of(2026, 5, 10));
	}

	@Test
	void liesBeforeTheDayAskedAboutOrIsNotTold() {
		assertThat(end(LocalDate.of(2026, 5, 10), years(Rulebook.BEGINNING, 6))).isEmpty();
		assertThat(end(LocalDate.of(2026, 5, 11), years(Rulebook.BEGINNING, 6))).contains(LocalDate.of(2026, 5, 10));
	}

	@Test
	void mayBePast() {
		assertThat(end(TODAY, years(Rulebook.BEGINNING, 5))).contains(LocalDate.of(2025, 5, 10));
		assertThat(end(LocalDate.of(2025, 5, 10), years(Rulebook.BEGINNING, 5))).isEmpty();
	}

	@Test
	void comesOnTheEveOfRulesUnderWhichItIsTooOld() {
		assertThat(end(NEXT_YEAR, years(Rulebook.BEGINNING, 8), years(MARCH, 5))).contains(LocalDate.of(2026, 2, 28));
	}

	@Test
	void comesLaterUnderRulesThatAllowMoreYearsInTime() {
		assertThat(end(NEXT_YEAR, years(Rulebook.BEGINNING, 6), years(MARCH, 8))).isEmpty();
		assertThat(end(LocalDate.of(2029, 1, 1), years(Rulebook.BEGINNING, 6), years(MARCH, 8)))
			.contains(LocalDate.of(2028, 5, 10));
	}

	@Test
	void doesNotKnowRulesThatComeIntoForceAfterTheDayAskedAbout() {
		assertThat(end(LocalDate.of(2026, 2, 28), years(Rulebook.BEGINNING, 8), years(MARCH, 5))).isEmpty();
		assertThat(end(MARCH, years(Rulebook.BEGINNING, 8), years(MARCH, 5))).contains(LocalDate.of(2026, 2, 28));
	}

	private static Optional<LocalDate> end(LocalDate before, Rulebook... rulebooks) {
		CountyRules rules = new CountyRules(ZoneOffset.UTC,
				new Rulebooks(Arrays.stream(rulebooks)
					.map((rulebook) -> new Rulebooks.Recorded(rulebook, Instant.parse("2020-01-01T00:00:00Z")))
					.toList()));
		return CurrencyEnds.of(rules, TODAY, before, NOW).before(before, MEASURED, false);
	}

	private static Rulebook years(LocalDate from, int currencyYears) {
		Rulebook defaults = Rulebook.defaults(from);
		return new Rulebook(from, defaults.tieRule(), currencyYears, defaults.whenStale(), defaults.sightingYears(),
				defaults.remeasureWithinDays(), defaults.requiredSignOffs(), defaults.checkReadingsRequired(),
				defaults.slopeRule(), defaults.tolerances(), null, defaults.carryForward(),
				defaults.oldestFilingMonths(), defaults.answerDays(), defaults.title(), defaults.eligibleSpecies());
	}

}

package county.bigtree.domain.rulebook;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Set;

import county.bigtree.domain.measuring.SlopeRule;
import county.bigtree.domain.review.Tolerances;
import org.jspecify.annotations.Nullable;

/**
 * The rules of one county from a date on. Immutable: rules change by a later rulebook.
 *
 * @param effectiveOn the first day on which it holds
 * @param tieRule when a tree behind the leader shares its title
 * @param currencyYears years for which a measurement is current, 1 to 100
 * @param whenStale what a measurement that is no longer current does to a title
 * @param sightingYears years for which a stale tree may keep a title since it was last
 * seen standing, 1 to 100
 * @param remeasureWithinDays days for which a damaged tree may hold a title without being
 * remeasured, 0 or more
 * @param requiredSignOffs agreeing sign-offs that make a measurement count, 1 to 5
 * @param checkReadingsRequired whether a sign-off must bring the verifier's own readings
 * @param slopeRule from which ground breast height is taken
 * @param tolerances how far checked figures may differ from filed ones
 * @param carriedOverUntil the last day on which imported figures are current whatever
 * their age, or null
 * @param carryForward for how long earlier figures may stand in for those that a visit
 * lacks
 * @param oldestFilingMonths months after its day within which a measurement is filed, 1
 * to 1200; later ones count only by a coordinator's sign-off
 * @param answerDays days for which a returned nomination can be answered before it
 * lapses, 1 to 3650
 * @param title what is asked for a title beyond this; no fewer sign-offs
 * @param eligibleSpecies keys of the species of which trees may hold titles; null for
 * all. Trees of others are ranked and hold none.
 */
public record Rulebook(LocalDate effectiveOn, TieRule tieRule, int currencyYears, WhenStale whenStale,
		int sightingYears, int remeasureWithinDays, int requiredSignOffs, boolean checkReadingsRequired,
		SlopeRule slopeRule, Tolerances tolerances, @Nullable LocalDate carriedOverUntil, CarryForward carryForward,
		int oldestFilingMonths, int answerDays, TitleRules title, @Nullable Set<String> eligibleSpecies) {

	/**
	 * The day from which a county's first rulebook holds: before any measurement that the
	 * register takes.
	 */
	public static final LocalDate BEGINNING = LocalDate.of(1800, 1, 1);

	/** Where a county has said nothing else. */
	public static final int OLDEST_FILING_MONTHS = 18;

	/** Where a county has said nothing else. */
	public static final int ANSWER_DAYS = 60;

	public Rulebook {
		requireRange("currencyYears", currencyYears, 1, 100);
		requireRange("sightingYears", sightingYears, 1, 100);
		requireRange("remeasureWithin", remeasureWithinDays, 0, 36_500);
		requireRange("requiredSignOffs", requiredSignOffs, 1, 5);
		requireRange("oldestFilingMonths", oldestFilingMonths, 1, 1200);
		requireRange("answerDays", answerDays, 1, 3650);
		requireRange("requiredSignOffsForTitle", title.requiredSignOffs(), requiredSignOffs, 5);
		if (effectiveOn.isBefore(BEGINNING)) {
			throw new IllegalArgumentException("effectiveOn must be " + BEGINNING + " or later, was " + effectiveOn);
		}
		if (eligibleSpecies != null) {
			eligibleSpecies = Set.copyOf(eligibleSpecies);
			requireRange("number of eligibleSpecies", eligibleSpecies.size(), 1, 5000);
		}
	}

	/**
	 * The rules of a county that has said nothing else: ties within 5 points,
	 * measurements current for 8 years and kept when stale, 12 sighting years, 180 days
	 * after damage, one sign-off, nothing carried forward, filed within 18 months,
	 * answered within 60 days, nothing more for a title, all species.
	 */
	public static Rulebook defaults(LocalDate effectiveOn) {
		return new Rulebook(effectiveOn, new TieRule.WithinPoints(new BigDecimal(5)), 8, WhenStale.KEEPS, 12, 180, 1,
				false, SlopeRule.UPHILL, Tolerances.STANDARD, null, CarryForward.NONE, OLDEST_FILING_MONTHS,
				ANSWER_DAYS, TitleRules.NONE, null);
	}

	/**
	 * Whether trees of the species may hold titles.
	 * @param species its key, as it is ranked
	 */
	public boolean admits(String species) {
		return this.eligibleSpecies == null || this.eligibleSpecies.contains(species);
	}

	/**
	 * The last day on which a measurement is current.
	 * @param measuredOn its measuring day
	 * @param carriedOver whether its figures were imported on the word of an older record
	 */
	public LocalDate currentUntil(LocalDate measuredOn, boolean carriedOver) {
		LocalDate until = measuredOn.plusYears(this.currencyYears);
		LocalDate spared = this.carriedOverUntil;
		return (carriedOver && spared != null && spared.isAfter(until)) ? spared : until;
	}

	/**
	 * Whether a measurement came too long after its day to count without a coordinator.
	 */
	public boolean filedLate(LocalDate measuredOn, LocalDate filedOn) {
		return measuredOn.plusMonths(this.oldestFilingMonths).isBefore(filedOn);
	}

	/**
	 * The last day on which a damaged tree may hold a title without being remeasured.
	 * @param lostOn the day on which part of it was lost
	 */
	public LocalDate remeasureUntil(LocalDate lostOn) {
		return lostOn.plusDays(this.remeasureWithinDays);
	}

	private static void requireRange(String name, int value, int least, int most) {
		if (value < least || value > most) {
			throw new IllegalArgumentException(name + " must be " + least + " to " + most + ", was " + value);
		}
	}

}

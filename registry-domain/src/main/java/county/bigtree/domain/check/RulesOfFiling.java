package county.bigtree.domain.check;

import county.bigtree.domain.measuring.SlopeRule;
import county.bigtree.domain.rulebook.CarryForward;
import county.bigtree.domain.rulebook.Rulebook;

/**
 * What a county's rules say of a filing.
 *
 * @param oldestFilingMonths how long after its day a measurement may be filed
 * @param speciesEligible whether its species may hold titles there
 * @param slopeRule from which ground breast height is taken
 * @param carryForward for how long earlier figures may stand in for those that it lacks
 */
public record RulesOfFiling(int oldestFilingMonths, boolean speciesEligible, SlopeRule slopeRule,
		CarryForward carryForward) {

	/**
	 * Of a county that has said nothing else.
	 */
	public static final RulesOfFiling DEFAULTS = new RulesOfFiling(Rulebook.OLDEST_FILING_MONTHS, true,
			SlopeRule.UPHILL, CarryForward.NONE);

	/**
	 * The same, carrying other figures forward.
	 */
	public RulesOfFiling carrying(CarryForward carries) {
		return new RulesOfFiling(this.oldestFilingMonths, this.speciesEligible, this.slopeRule, carries);
	}

}

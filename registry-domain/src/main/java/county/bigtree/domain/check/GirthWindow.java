package county.bigtree.domain.check;

import java.time.temporal.ChronoUnit;
import java.util.Optional;

import county.bigtree.domain.quantity.Estimate;

/**
 * Between which girths a tree measured before should lie now: from the girth before, less
 * what two tapes differ by, to that and what stems grow at most; in inches.
 *
 * @param before the girth then
 * @param now the girth filed
 * @param least of the window
 * @param most of the window
 * @param years between the visits, not negative
 */
record GirthWindow(double before, double now, double least, double most, double years) {

	private static final double DAYS_IN_YEAR = 365.25;

	static Optional<GirthWindow> of(Filed filed, Known known) {
		Earlier earlier = known.earlier();
		Estimate now = filed.sizes().girthInches();
		Estimate before = (earlier != null) ? earlier.sizes().girthInches() : null;
		if (earlier == null || filed.measuredOn() == null || now == null || before == null
				|| filed.measuredOn().isBefore(earlier.measuredOn())) {
			return Optional.empty();
		}
		double years = ChronoUnit.DAYS.between(earlier.measuredOn(), filed.measuredOn()) / DAYS_IN_YEAR;
		double joint = Math.hypot(now.standardUncertainty(), before.standardUncertainty());
		return Optional.of(between(before.value(), now.value(), joint, years));
	}

	/** Coverage factor 2 for the joint uncertainty. */
	static GirthWindow between(double before, double now, double jointUncertainty, double years) {
		double slack = Estimate.COVERAGE_FACTOR * jointUncertainty;
		return new GirthWindow(before, now, before - slack - Thresholds.GIRTH_SLACK,
				before + slack + GirthGrowth.inches(Thresholds.RING_INCHES, years), years);
	}

	Finding.Numbers numbers() {
		return new Finding.Numbers().with("girthInches", this.now)
			.with("girthBeforeInches", this.before)
			.with("leastInches", this.least)
			.with("mostInches", this.most)
			.with("years", this.years);
	}

}

package county.bigtree.domain.rulebook;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

import county.bigtree.domain.quantity.Estimate;

/**
 * For how many years a height or a crown spread may stand in for one that a later visit
 * did not measure. A girth never does.
 *
 * @param heightYears 0 (never, the default) to 20
 * @param crownYears 0 (never, the default) to 20
 */
public record CarryForward(int heightYears, int crownYears) {

	/**
	 * Nothing is carried forward.
	 */
	public static final CarryForward NONE = new CarryForward(0, 0);

	/**
	 * The most that a height or a spread is taken to have grown in a year, in feet.
	 * Proposal, no source for old trees: half the 2 ft of height a year published for
	 * yellow-poplar in its first fifty years on good sites (USDA Forest Service, Silvics
	 * of North America, volume 2, 1990); of the spread about what open-grown white oak
	 * adds (1.883 ft for an inch of diameter) at half an inch of diameter a year.
	 */
	public static final double GROWTH_FEET_A_YEAR = 1;

	private static final int MOST_YEARS = 20;

	private static final double DAYS_IN_A_YEAR = 365.25;

	public CarryForward {
		requireYears("heightYears", heightYears);
		requireYears("crownYears", crownYears);
	}

	/**
	 * Whether a figure of one day may stand in on a later one.
	 */
	public static boolean within(int years, LocalDate measuredOn, LocalDate visit) {
		return years > 0 && !measuredOn.plusYears(years).isBefore(visit);
	}

	/**
	 * The figure with its uncertainty widened for what may have grown since: up to
	 * {@link #GROWTH_FEET_A_YEAR}, any amount as likely as any other (JCGM 100:2008,
	 * 4.3.7), taken about its unchanged value.
	 * @param figure in feet
	 */
	public static Estimate widened(Estimate figure, LocalDate measuredOn, LocalDate visit) {
		double years = ChronoUnit.DAYS.between(measuredOn, visit) / DAYS_IN_A_YEAR;
		double growth = GROWTH_FEET_A_YEAR * years / Math.sqrt(3);
		return new Estimate(figure.value(), Math.hypot(figure.standardUncertainty(), growth));
	}

	private static void requireYears(String name, int years) {
		if (years < 0 || years > MOST_YEARS) {
			throw new IllegalArgumentException(
					"carryForward." + name + " must be 0 to " + MOST_YEARS + ", was " + years);
		}
	}

}

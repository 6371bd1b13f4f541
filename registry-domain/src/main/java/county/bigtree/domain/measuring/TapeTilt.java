package county.bigtree.domain.measuring;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;

/**
 * How much too much a tape reads that isn't square to the stem, a cylinder. Geometry, no
 * other source.
 */
public final class TapeTilt {

	private static final double STEEPEST_DEGREES = 80;

	private TapeTilt() {
	}

	/** Reading over girth when the tape lies in a plane tilted by so much. */
	public static double factor(double tiltDegrees) {
		double tilt = Math.toRadians(Figures.within("tiltDegrees", tiltDegrees, 0, STEEPEST_DEGREES, "from 0 to 80"));
		double sine = Math.sin(tilt);
		return 2 / Math.PI / Math.cos(tilt) * EllipticIntegral.completeSecondKind(sine * sine);
	}

	/**
	 * The derivative of {@link #factor} per radian: odd, and zero for a level tape.
	 */
	static double slope(double tiltRadians) {
		double sine = Math.sin(tiltRadians);
		if (sine == 0) {
			return 0;
		}
		double e = EllipticIntegral.completeSecondKind(sine * sine);
		double k = EllipticIntegral.completeFirstKind(sine * sine);
		double cosine = Math.cos(tiltRadians);
		return 2 / Math.PI * (sine / (cosine * cosine) * e + (e - k) / sine);
	}

	/**
	 * What to take off a reading whose tilt is only known to be at most so much, all
	 * tilts being as likely: the mean of {@code t² / 4} with its standard deviation.
	 * @param steepest in radians, from 0; good to a percent of itself up to 0.35
	 */
	public static Estimate unknownTilt(double reading, double steepest) {
		double most = Figures.within("steepest", steepest, 0, 0.35, "from 0 to 0.35 radians");
		double squared = most * most * Figures.positive("reading", reading);
		return new Estimate(squared / 12, squared / 4 * Math.sqrt(4.0 / 45));
	}

	/** The reading when the ends miss each other by a rise over one wrap; in one unit. */
	public static double helix(double girth, double rise) {
		return Math.hypot(Figures.positive("girth", girth), Figures.finite("rise", rise));
	}

}

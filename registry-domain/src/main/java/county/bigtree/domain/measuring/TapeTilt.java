package county.bigtree.domain.measuring;

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

	/** The reading when the ends miss each other by a rise over one wrap; in one unit. */
	public static double helix(double girth, double rise) {
		return Math.hypot(Figures.positive("girth", girth), Figures.finite("rise", rise));
	}

}

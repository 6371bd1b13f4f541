package county.bigtree.domain.measuring;

import county.bigtree.domain.points.Correlations;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Length;
import org.jspecify.annotations.Nullable;

/**
 * The girth of a visit, where its height or crown was counted from the bark and added the
 * stem's radius by that same girth: an error of the tape then goes into two figures or
 * three. JCGM 100:2008, 5.2.2 and F.1.2.3.
 */
final class SharedGirth {

	private static final double INCHES_IN_FOOT = 12;

	private SharedGirth() {
	}

	/** None unless the girth was entered again as the stem's, figure by figure. */
	static Correlations correlations(@Nullable GirthReading girth, @Nullable HeightReading height,
			@Nullable CrownReading crown, Estimate c, Estimate h, Estimate w) {
		if (!(girth instanceof TapeGirth tape) || tape.tilt() != null || c.standardUncertainty() == 0) {
			return Correlations.NONE;
		}
		double inHeight = share(byGirth(tape.girth(), height), c, h);
		double inCrown = share(byGirth(tape.girth(), crown), c, w);
		return (inHeight == 0 && inCrown == 0) ? Correlations.NONE
				: new Correlations(inHeight, inCrown, inHeight * inCrown);
	}

	private static double share(double feetByInch, Estimate girth, Estimate figure) {
		return (feetByInch == 0) ? 0
				: Math.min(1, feetByInch * girth.standardUncertainty() / figure.standardUncertainty());
	}

	/** What an inch of girth adds to the figure, in feet. */
	private static double byGirth(Length girth, @Nullable Reading reading) {
		if (reading instanceof CrownSpokes spokes && girth.equals(spokes.stemGirth())) {
			return 1 / Math.PI / INCHES_IN_FOOT;
		}
		if (reading instanceof ShadowHeight shadow && girth.equals(shadow.stemGirth())) {
			double ratio = shadow.referenceHeight().feet() / shadow.referenceShadow().feet();
			return ratio / (2 * Math.PI) / INCHES_IN_FOOT;
		}
		return 0;
	}

}

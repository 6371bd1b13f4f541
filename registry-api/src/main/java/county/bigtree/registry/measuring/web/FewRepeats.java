package county.bigtree.registry.measuring.web;

import java.math.BigDecimal;

import county.bigtree.domain.points.StudentDistribution;
import org.jspecify.annotations.Nullable;

/**
 * What few repeats do to an uncertainty (JCGM 100:2008, G.4): both null where nothing was
 * repeated.
 *
 * @param studentFactor for a level of confidence of 95 %
 */
record FewRepeats(@Nullable BigDecimal degreesOfFreedom, @Nullable BigDecimal studentFactor) {

	private static final double CONFIDENCE = 0.95;

	static FewRepeats of(double degreesOfFreedom) {
		return Double.isInfinite(degreesOfFreedom) ? new FewRepeats(null, null) : new FewRepeats(
				Rounded.hundredths(degreesOfFreedom),
				Rounded.hundredths(StudentDistribution.coverageFactor(CONFIDENCE, Math.max(1, degreesOfFreedom))));
	}

}

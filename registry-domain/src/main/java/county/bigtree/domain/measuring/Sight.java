package county.bigtree.domain.measuring;

import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;

/**
 * What the angle methods share.
 */
final class Sight {

	private Sight() {
	}

	static void requireTopAboveBase(Angle top, Angle base) {
		requireAbove("topAngle", top, "the base angle", base);
	}

	static void requireAbove(String field, Angle upper, String other, Angle lower) {
		if (!(upper.tangent() > lower.tangent())) {
			throw new InvalidReadingException(field + "/value", Flaw.OUT_OF_RANGE,
					"must be above " + other + " of " + lower.text() + " but was " + upper.text());
		}
	}

	/** The derivative of the tangent, per radian. */
	static double secantSquared(Angle angle) {
		double tangent = angle.tangent();
		return 1 + tangent * tangent;
	}

}

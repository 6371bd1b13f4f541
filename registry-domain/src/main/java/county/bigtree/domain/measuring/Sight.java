package county.bigtree.domain.measuring;

import java.util.List;

import county.bigtree.domain.quantity.LengthUnit;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;
import org.jspecify.annotations.Nullable;

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

	/** Where the base is hidden, a mark on the stem at a taped height is sighted. */
	static void requireMark(@Nullable Length markAboveBase) {
		if (markAboveBase != null) {
			Figures.notNegative("markAboveBase", markAboveBase.feet());
		}
	}

	static double feet(@Nullable Length length) {
		return (length != null) ? length.feet() : 0;
	}

	static boolean statesUncertainty(@Nullable Length length) {
		return length == null || length.statesUncertainty();
	}

	static void addMark(List<Budget.Term> terms, @Nullable Length markAboveBase) {
		if (markAboveBase != null) {
			terms.add(Budget.term("k", 1, markAboveBase.estimate(LengthUnit.FT, InstrumentDefaults.MARK_HEIGHT)));
		}
	}

	static List<WorkingLine> withMark(Working working, Figure figure, String formula, String numbers,
			@Nullable Length markAboveBase) {
		if (markAboveBase == null) {
			return working.then(figure.lines(formula, numbers));
		}
		return working.converted("k", markAboveBase, LengthUnit.FT)
			.then(figure.lines(formula + " + k", numbers + " + " + Working.feet(markAboveBase) + " ft"));
	}

}

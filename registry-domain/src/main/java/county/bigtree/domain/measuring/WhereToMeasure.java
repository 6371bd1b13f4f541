package county.bigtree.domain.measuring;

import java.util.ArrayList;
import java.util.List;

import county.bigtree.domain.quantity.Figures;
import org.jspecify.annotations.Nullable;

/**
 * Where on one tree the girth is taken, and why: the rules of {@link MeasuringPoint} and
 * {@link SlopeRule} put together. A fork or a swell that moves the point up goes before
 * the slope, which moves it down.
 *
 * @param feetAboveUphillGround more than zero
 * @param reasons sentences in the order in which the rules were applied
 */
public record WhereToMeasure(double feetAboveUphillGround, List<String> reasons) {

	private static final double INCHES = 12;

	private static final double PERCENT = 100;

	public WhereToMeasure {
		reasons = List.copyOf(reasons);
	}

	/**
	 * The point on a tree.
	 * @param girthInches about, for the slope: more than zero
	 * @param slopePercent of the ground, 0 or more
	 * @param unionFeet where the piths of the stems meet; null where the stem does not
	 * fork
	 * @param swellEndFeet where the buttresses end; null where there are none
	 */
	public static WhereToMeasure of(SlopeRule rule, double girthInches, double slopePercent, @Nullable Double unionFeet,
			@Nullable Double swellEndFeet) {
		double diameter = Figures.positive("girthInches", girthInches) / Math.PI / INCHES;
		double slope = Figures.notNegative("slopePercent", slopePercent) / PERCENT;
		List<String> reasons = new ArrayList<>();
		double above = Math.max(fork(unionFeet, reasons), swell(swellEndFeet, reasons));
		if (above > MeasuringPoint.BREAST_HEIGHT_FEET) {
			return new WhereToMeasure(above, reasons);
		}
		return new WhereToMeasure(onSlope(rule, diameter, slope, reasons), reasons);
	}

	private static double fork(@Nullable Double unionFeet, List<String> reasons) {
		if (unionFeet == null) {
			return MeasuringPoint.BREAST_HEIGHT_FEET;
		}
		double above = MeasuringPoint.onForkedStem(unionFeet);
		if (above > MeasuringPoint.BREAST_HEIGHT_FEET) {
			reasons.add("The stems meet below 4.5 ft: each is measured 3.5 ft above where their piths meet, at "
					+ feet(above) + ".");
		}
		else if (unionFeet < 1) {
			reasons.add("The piths meet below 1 ft: the stems are trees of their own, each measured at 4.5 ft.");
		}
		else {
			reasons.add(
					"The stem forks at 4.5 ft or above: it is one stem, measured at 4.5 ft, or just below where the fork swells it.");
		}
		return above;
	}

	private static double swell(@Nullable Double swellEndFeet, List<String> reasons) {
		if (swellEndFeet == null) {
			return MeasuringPoint.BREAST_HEIGHT_FEET;
		}
		double above = MeasuringPoint.aboveSwell(swellEndFeet);
		reasons.add((above > MeasuringPoint.BREAST_HEIGHT_FEET)
				? "The buttresses reach 3 ft or more: the stem is measured 1.5 ft above their end, at " + feet(above)
						+ "."
				: "The buttresses end below 3 ft, and change nothing.");
		return above;
	}

	private static double onSlope(SlopeRule rule, double diameter, double slope, List<String> reasons) {
		double above = rule.feetAboveUphillGround(diameter, slope);
		if (above <= 0) {
			reasons.add("Midway lies below the uphill ground here: the girth is taken 4.5 ft above it instead.");
			return MeasuringPoint.BREAST_HEIGHT_FEET;
		}
		reasons.add("The girth is taken 4.5 ft above the ground " + rule.where()
				+ ((above < MeasuringPoint.BREAST_HEIGHT_FEET)
						? ", which is " + feet(above) + " above the uphill ground" : "")
				+ ".");
		return above;
	}

	private static String feet(double feet) {
		return Figures.rounded(feet, 3) + " ft";
	}

}

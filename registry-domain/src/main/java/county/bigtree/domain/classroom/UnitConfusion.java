package county.bigtree.domain.classroom;

import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

import county.bigtree.domain.measuring.Kind;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;

/**
 * Slips that multiply or divide a figure by a known number: two units taken for each
 * other, a decimal point, a diameter for a girth, a radius for a width. The factors are
 * those of the units' definitions (NIST SP 811 (2008), appendix B).
 */
enum UnitConfusion {

	INCHES_FEET(12, "unit-slip", "inches and feet"),

	FEET_METRES(1 / 0.3048, "unit-slip", "feet and metres"),

	CENTIMETRES_INCHES(2.54, "unit-slip", "centimetres and inches"),

	INCHES_METRES(1 / 0.0254, "unit-slip", "inches and metres"),

	CENTIMETRES_FEET(30.48, "unit-slip", "centimetres and feet"),

	CENTIMETRES_METRES(100, "unit-slip", "centimetres and metres"),

	FEET_YARDS(3, "unit-slip", "feet and yards"),

	DECIMAL_POINT(10, "decimal-point", "the places before and behind the decimal point"),

	DIAMETER(Math.PI, "diameter-for-girth", "diameter and girth"),

	HALF(2, "half-for-whole", "a half and the whole of it, as a radius and a width,");

	private final double factor;

	private final String code;

	private final String confused;

	UnitConfusion(double factor, String code, String confused) {
		this.factor = factor;
		this.code = code;
		this.confused = confused;
	}

	/** The one that fits best, if any brings the figure into the class. */
	static Optional<LikelyReason> of(Kind kind, Estimate figure, Yardstick yardstick) {
		double ratio = yardstick.ratio(figure);
		return possible(kind).stream()
			.filter((slip) -> yardstick.fits(figure, slip.power(ratio)))
			.min(Comparator.comparingDouble((slip) -> Math.abs(Math.log(ratio / slip.power(ratio)))))
			.map((slip) -> slip.reason(ratio));
	}

	private static Set<UnitConfusion> possible(Kind kind) {
		EnumSet<UnitConfusion> all = EnumSet.copyOf(Arrays.asList(values()));
		if (kind != Kind.GIRTH) {
			all.remove(DIAMETER);
		}
		if (kind == Kind.HEIGHT) {
			all.remove(HALF);
		}
		return all;
	}

	private double power(double ratio) {
		return (ratio > 1) ? this.factor : 1 / this.factor;
	}

	private LikelyReason reason(double ratio) {
		String times = (ratio > 1) ? "%s times as much as".formatted(Figures.rounded(ratio, 3))
				: "one part in %s of what".formatted(Figures.rounded(1 / ratio, 3));
		return new LikelyReason(this.code,
				"This is %s the class found: %s may have been mixed up.".formatted(times, this.confused));
	}

}

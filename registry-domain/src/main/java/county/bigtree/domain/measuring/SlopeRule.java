package county.bigtree.domain.measuring;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * From which ground breast height is taken on a slope: from the uphill side (Forest
 * Inventory and Analysis core field guide, 5.9.2, from memory) or midway (Luoma and
 * others 2017, Forests 8(2):38).
 */
public enum SlopeRule {

	/**
	 * 4.5 ft above the ground on the uphill side.
	 */
	UPHILL("on the uphill side"),

	/**
	 * 4.5 ft above the middle of the uphill and the downhill ground.
	 */
	MIDSLOPE("midway between uphill and downhill side");

	private final String where;

	SlopeRule(String where) {
		this.where = where;
	}

	/**
	 * The word used in requests and answers.
	 */
	public String word() {
		return name().toLowerCase(Locale.ROOT);
	}

	/**
	 * The rule of this word.
	 */
	public static Optional<SlopeRule> find(String word) {
		return Arrays.stream(values()).filter((rule) -> rule.word().equals(word)).findFirst();
	}

	/**
	 * Where the ground is that it starts from, to follow "4.5 ft above the ground".
	 */
	public String where() {
		return this.where;
	}

	/**
	 * How high above the uphill ground the girth is to be taken.
	 * @param diameterFeet of the stem, more than zero
	 * @param slopeTangent of the ground, 0 or more
	 */
	public double feetAboveUphillGround(double diameterFeet, double slopeTangent) {
		double drop = MeasuringPoint.midslopeDrop(diameterFeet, slopeTangent);
		return MeasuringPoint.BREAST_HEIGHT_FEET - ((this == MIDSLOPE) ? drop : 0);
	}

}

package county.bigtree.domain.quantity;

import java.util.Arrays;
import java.util.Optional;

/**
 * Units in which a length may be entered. Exact by definition: the inch is 25.4 mm, the
 * foot 0.3048 m, the yard 0.9144 m (NIST SP 811 (2008), appendix B).
 */
public enum LengthUnit {

	IN("in", 254),

	FT("ft", 3048),

	YD("yd", 9144),

	MM("mm", 10),

	CM("cm", 100),

	M("m", 10_000);

	private final String code;

	private final int tenthsOfMillimetre;

	LengthUnit(String code, int tenthsOfMillimetre) {
		this.code = code;
		this.tenthsOfMillimetre = tenthsOfMillimetre;
	}

	/** As written in JSON and on paper. */
	public String code() {
		return this.code;
	}

	public static Optional<LengthUnit> find(String code) {
		return Arrays.stream(values()).filter((unit) -> unit.code.equals(code)).findFirst();
	}

	/** Converts with one multiplication and one division by whole numbers. */
	public double to(LengthUnit other, double value) {
		return (this == other) ? value : value * this.tenthsOfMillimetre / other.tenthsOfMillimetre;
	}

}

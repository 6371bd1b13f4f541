package county.bigtree.domain.quantity;

import java.util.Arrays;
import java.util.Optional;

/**
 * Units in which an angle of elevation may be entered. A percentage is a hundred times
 * the angle's tangent, so that 45 degrees are 100 %.
 */
public enum AngleUnit {

	DEG("deg"),

	PCT("pct");

	private final String code;

	AngleUnit(String code) {
		this.code = code;
	}

	/** As written in JSON. */
	public String code() {
		return this.code;
	}

	public static Optional<AngleUnit> find(String code) {
		return Arrays.stream(values()).filter((unit) -> unit.code.equals(code)).findFirst();
	}

}

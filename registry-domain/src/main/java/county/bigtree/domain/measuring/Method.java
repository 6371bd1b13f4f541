package county.bigtree.domain.measuring;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * How a reading was taken. The code is what JSON and rulebooks write.
 */
public enum Method {

	TAPE(Kind.GIRTH, "tape"),

	STRING(Kind.GIRTH, "string"),

	/** Half the way around, where the whole can't be wrapped. */
	HALF_GIRTH(Kind.GIRTH, "half-girth"),

	/** Between two girths, where breast height can't be taped. */
	TAPER(Kind.GIRTH, "taper"),

	/** Every stem of a tree that has several. */
	STEMS(Kind.GIRTH, "stems"),

	DIAMETER(Kind.GIRTH, "diameter"),

	BILTMORE(Kind.GIRTH, "biltmore"),

	POLE(Kind.HEIGHT, "pole"),

	SHADOW(Kind.HEIGHT, "shadow"),

	STICK(Kind.HEIGHT, "stick"),

	EQUAL_ARM(Kind.HEIGHT, "equal-arm"),

	TANGENT(Kind.HEIGHT, "tangent"),

	SINE(Kind.HEIGHT, "sine"),

	TWO_STATION(Kind.HEIGHT, "two-station"),

	/** A height taken over from an older record that doesn't say how. */
	STATED_HEIGHT(Kind.HEIGHT, "stated-height"),

	AXES(Kind.CROWN, "axes"),

	SPOKES(Kind.CROWN, "spokes"),

	/** A mean spread taken over from an older record that doesn't say how. */
	STATED_SPREAD(Kind.CROWN, "stated-spread");

	private final Kind kind;

	private static final Map<String, Method> BY_CODE = Arrays.stream(values())
		.collect(Collectors.toMap(Method::code, Function.identity()));

	private final String code;

	Method(Kind kind, String code) {
		this.kind = kind;
		this.code = code;
	}

	public Kind kind() {
		return this.kind;
	}

	public String code() {
		return this.code;
	}

	public static Optional<Method> find(String code) {
		return Optional.ofNullable(BY_CODE.get(code));
	}

}

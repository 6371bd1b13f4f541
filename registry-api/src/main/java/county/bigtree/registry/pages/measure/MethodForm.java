package county.bigtree.registry.pages.measure;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

import county.bigtree.domain.measuring.Kind;
import county.bigtree.domain.measuring.Method;

/**
 * What the desk asks for a method: the entries of the API's readings under their own
 * names. A method that can be entered in two ways has two forms.
 */
public enum MethodForm {

	TAPE(Method.TAPE, "tape", FormField.length("girth", "in")),

	STRING(Method.STRING, "string", FormField.length("length", "in")),

	STRING_STICKS(Method.STRING, "string-sticks", FormField.count("sticks"), FormField.length("stickLength", "in"),
			FormField.length("rest", "in")),

	DIAMETER(Method.DIAMETER, "diameter", FormField.lengths("diameters", "in", 2)),

	HALF_GIRTH(Method.HALF_GIRTH, "half-girth", FormField.length("halfGirth", "in")),

	TAPER(Method.TAPER, "taper", FormField.length("lowerGirth", "in"), FormField.length("lowerHeight", "ft"),
			FormField.length("upperGirth", "in"), FormField.length("upperHeight", "ft")),

	STEMS(Method.STEMS, "stems", FormField.lengths("stems", "in", 6)),

	BILTMORE(Method.BILTMORE, "biltmore", FormField.length("diameterRead", "in")),

	BILTMORE_REACH(Method.BILTMORE, "biltmore-reach", FormField.length("stickReading", "in"),
			FormField.length("reach", "in")),

	STICK(Method.STICK, "stick", FormField.length("treeOnStick", "in"), FormField.length("referenceOnStick", "in"),
			FormField.length("referenceHeight", "in")),

	SHADOW(Method.SHADOW, "shadow", FormField.length("treeShadow", "ft"), FormField.length("referenceHeight", "in"),
			FormField.length("referenceShadow", "in")),

	EQUAL_ARM(Method.EQUAL_ARM, "equal-arm", FormField.length("distance", "ft"),
			FormField.length("baseOffset", "ft").optional()),

	TANGENT(Method.TANGENT, "tangent", FormField.length("horizontalDistance", "ft"), FormField.angle("topAngle"),
			FormField.angle("baseAngle")),

	TANGENT_SLOPE(Method.TANGENT, "tangent-slope", FormField.length("slopeDistance", "ft"),
			FormField.angle("slopeAngle"), FormField.angle("topAngle"), FormField.angle("baseAngle")),

	SINE(Method.SINE, "sine", FormField.length("topDistance", "ft"), FormField.angle("topAngle"),
			FormField.length("baseDistance", "ft"), FormField.angle("baseAngle")),

	TWO_STATION(Method.TWO_STATION, "two-station", FormField.length("stationsApart", "ft"),
			FormField.angle("nearTopAngle"), FormField.angle("farTopAngle"), FormField.angle("nearBaseAngle")),

	POLE(Method.POLE, "pole", FormField.length("height", "ft")),

	AXES(Method.AXES, "axes", FormField.lengths("axes", "ft", 4).atLeast(2)),

	SPOKES(Method.SPOKES, "spokes", FormField.lengths("radii", "ft", 8).atLeast(4));

	private final Method method;

	private final String key;

	private final List<FormField> fields;

	MethodForm(Method method, String key, FormField... fields) {
		this.method = method;
		this.key = key;
		this.fields = List.of(fields);
	}

	public Method method() {
		return this.method;
	}

	/** Names it in addresses and messages. */
	public String key() {
		return this.key;
	}

	public List<FormField> fields() {
		return this.fields;
	}

	/** The forms for one figure, the simplest first. */
	public static List<MethodForm> of(Kind kind) {
		return Arrays.stream(values()).filter((form) -> form.method.kind() == kind).toList();
	}

	/** The form of that key for that figure, or its simplest. */
	static MethodForm find(Kind kind, String key) {
		Optional<MethodForm> named = of(kind).stream().filter((form) -> form.key.equals(key)).findFirst();
		return named.orElse(of(kind).get(0));
	}

}

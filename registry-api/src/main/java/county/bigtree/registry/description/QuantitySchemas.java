package county.bigtree.registry.description;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

import county.bigtree.domain.measuring.CrownReading;
import county.bigtree.domain.measuring.GirthReading;
import county.bigtree.domain.measuring.HeightReading;
import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Length;
import io.swagger.v3.oas.models.Components;
import io.swagger.v3.oas.models.media.Schema;
import org.springdoc.core.utils.SpringDocUtils;

/**
 * Describes quantities and readings, whose form in JSON does not follow from their Java
 * types.
 */
final class QuantitySchemas {

	private static final String PREFIX = "#/components/schemas/";

	private QuantitySchemas() {
	}

	/** Lets bodies refer to them wherever they hold one. */
	static void replaceTypes() {
		Map.of(Length.class, "Length", Angle.class, "Angle", GirthReading.class, "GirthReading", HeightReading.class,
				"HeightReading", CrownReading.class, "CrownReading")
			.forEach((type, name) -> SpringDocUtils.getConfig().replaceWithSchema(type, ref(name)));
	}

	static void addTo(Components components) {
		components.addSchemas("Length", length());
		components.addSchemas("Angle", angle());
		components.addSchemas("GirthReading", oneOf("A girth reading: the fields that its method takes.",
				girth("tape", Map.of("girth", ref("Length"), "tilt", ref("Angle")), "girth"),
				girth("half-girth", Map.of("halfGirth", ref("Length")), "halfGirth"),
				girth("taper",
						Map.of("lowerGirth", ref("Length"), "lowerHeight", ref("Length"), "upperGirth", ref("Length"),
								"upperHeight", ref("Length")),
						"lowerGirth", "lowerHeight", "upperGirth", "upperHeight"),
				girth("stems", Map.of("stems", list(ref("Length"), 2, 100)), "stems"),
				girth("string",
						Map.of("length", ref("Length"), "sticks", integer(), "stickLength", ref("Length"), "rest",
								ref("Length"))),
				girth("diameter", Map.of("diameters", list(ref("Length"), 1, 2)), "diameters"), girth("biltmore",
						Map.of("diameterRead", ref("Length"), "stickReading", ref("Length"), "reach", ref("Length")))));
		components.addSchemas("HeightReading", heights());
		components.addSchemas("CrownReading",
				oneOf("A crown reading: the fields that its method takes.",
						reading("axes", Map.of("axes", list(ref("Length"), 2, 360)), "axes"),
						reading("spokes", Map.of("radii", list(ref("Length"), 4, 360), "bearings",
								list(number(), 4, 360), "stemGirth", ref("Length")), "radii")));
	}

	private static Schema<?> heights() {
		return oneOf("A height reading: the fields that its method takes.",
				reading("pole", Map.of("height", ref("Length"), "tilt", ref("Angle"), "offset", ref("Length")),
						"height"),
				reading("shadow",
						Map.of("treeShadow", ref("Length"), "referenceHeight", ref("Length"), "referenceShadow",
								ref("Length"), "groundSlope", ref("Angle"), "stemGirth", ref("Length"), "at",
								text().format("date-time")),
						"treeShadow", "referenceHeight", "referenceShadow"),
				reading("stick",
						Map.of("treeOnStick", ref("Length"), "referenceOnStick", ref("Length"), "referenceHeight",
								ref("Length")),
						"treeOnStick", "referenceOnStick", "referenceHeight"),
				reading("equal-arm",
						Map.of("distance", ref("Length"), "stickLength", ref("Length"), "reach", ref("Length"),
								"baseOffset", ref("Length")),
						"distance"),
				reading("tangent",
						Map.of("horizontalDistance", ref("Length"), "slopeDistance", ref("Length"), "slopeAngle",
								ref("Angle"), "lineToBase", ref("Length"), "topAngle", ref("Angle"), "baseAngle",
								ref("Angle"), "topOffset", ref("Length"), "markAboveBase", ref("Length")),
						"topAngle", "baseAngle"),
				reading("sine",
						Map.of("topDistance", ref("Length"), "topAngle", ref("Angle"), "baseDistance", ref("Length"),
								"baseLevelDistance", ref("Length"), "baseAngle", ref("Angle"), "markAboveBase",
								ref("Length")),
						"topDistance", "topAngle", "baseAngle"),
				reading("two-station",
						Map.of("stationsApart", ref("Length"), "farEyeAboveNear", ref("Length"), "nearTopAngle",
								ref("Angle"), "farTopAngle", ref("Angle"), "nearBaseAngle", ref("Angle"),
								"baseDistance", ref("Length"), "markAboveBase", ref("Length")),
						"stationsApart", "nearTopAngle", "farTopAngle", "nearBaseAngle"));
	}

	private static Schema<?> length() {
		Schema<?> single = object(Map.of("value", number(), "unit",
				text()._enum(List.of("in", "ft", "yd", "mm", "cm", "m")), "standardUncertainty", number()), "value",
				"unit");
		Schema<?> both = object(Map.of("feet", number(), "inches", number(), "standardUncertainty", number()), "feet",
				"inches");
		Schema<?> segments = object(Map.of("segments", list(ref("Length"), 2, 1000)), "segments");
		Schema<?> repeats = object(Map.of("repeats", list(ref("Length"), 2, 1000)), "repeats");
		Schema<?> sloped = object(Map.of("along", ref("Length"), "slope", ref("Angle")), "along", "slope");
		return oneOf(
				"A length as entered: in one unit, in feet and inches, in segments laid end to end, read several times "
						+ "over, or taped along a slope.",
				single, both, segments, repeats, sloped);
	}

	private static Schema<?> angle() {
		Schema<?> unit = text()._enum(List.of("deg", "pct"));
		Schema<?> once = object(Map.of("value", number(), "unit", unit, "standardUncertainty", number()), "value",
				"unit");
		Schema<?> repeated = object(
				Map.of("repeats", list(number(), 2, 1000), "unit", unit, "standardUncertainty", number()), "repeats",
				"unit");
		return oneOf("An angle of elevation as entered, in degrees or in percent, once or as sighted several times; "
				+ "negative below the eye.", once, repeated);
	}

	private static Schema<?> girth(String method, Map<String, Schema<?>> fields, String... required) {
		Map<String, Schema<?>> more = new TreeMap<>(fields);
		more.put("heightAboveGround", ref("Length"));
		more.put("breastHeightFrom", text()._enum(List.of("uphill", "midslope")));
		more.put("placement", text());
		return reading(method, more, required);
	}

	private static Schema<?> reading(String method, Map<String, Schema<?>> fields, String... required) {
		Map<String, Schema<?>> more = new TreeMap<>(fields);
		more.put("method", text()._enum(List.of(method)));
		more.put("instrument", text());
		more.put("remarks", text());
		Schema<?> reading = object(more, required);
		reading.addRequiredItem("method");
		return reading;
	}

	private static Schema<?> object(Map<String, Schema<?>> fields, String... required) {
		Schema<?> object = typed("object");
		new TreeMap<>(fields).forEach(object::addProperty);
		List.of(required).forEach(object::addRequiredItem);
		object.setAdditionalProperties(false);
		return object;
	}

	private static Schema<?> oneOf(String description, Schema<?>... forms) {
		Schema<?> schema = new Schema<>();
		schema.setDescription(description);
		for (Schema<?> form : forms) {
			schema.addOneOfItem(form);
		}
		return schema;
	}

	private static Schema<?> list(Schema<?> items, int least, int most) {
		Schema<?> list = typed("array");
		list.setItems(items);
		list.setMinItems(least);
		list.setMaxItems(most);
		return list;
	}

	private static Schema<?> ref(String name) {
		return new Schema<>().$ref(PREFIX + name);
	}

	private static Schema<?> number() {
		return typed("number");
	}

	private static Schema<?> integer() {
		return typed("integer");
	}

	private static Schema<String> text() {
		Schema<String> text = new Schema<>();
		text.setType("string");
		text.addType("string");
		return text;
	}

	private static Schema<?> typed(String type) {
		Schema<?> schema = new Schema<>();
		schema.setType(type);
		schema.addType(type);
		return schema;
	}

}

package county.bigtree.registry.http.quantity;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

import county.bigtree.domain.measuring.CrownReading;
import county.bigtree.domain.measuring.GirthNotes;
import county.bigtree.domain.measuring.GirthReading;
import county.bigtree.domain.measuring.HeightReading;
import county.bigtree.domain.measuring.Method;
import county.bigtree.domain.measuring.Notes;
import county.bigtree.domain.measuring.Reading;
import county.bigtree.domain.measuring.Readings;
import county.bigtree.domain.measuring.SlopeRule;
import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.RepeatedLength;
import county.bigtree.domain.quantity.SlopedLength;
import county.bigtree.registry.problem.InvalidEntries;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Readings and quantities to and from JSON. What is written is what was read: the same
 * method, entries, units and numbers (a number without idle zeros).
 */
public final class ReadingsJson {

	private static final JsonNodeFactory nodes = JsonNodeFactory.instance;

	private static final Map<String, ReadingShape> GIRTH = shapes(GirthReading.class);

	private static final Map<String, ReadingShape> HEIGHT = shapes(HeightReading.class);

	private static final Map<String, ReadingShape> CROWN = shapes(CrownReading.class);

	private static final Map<String, ReadingShape> FILED_HEIGHT = without(HEIGHT, Method.STATED_HEIGHT);

	private static final Map<String, ReadingShape> FILED_CROWN = without(CROWN, Method.STATED_SPREAD);

	private ReadingsJson() {
	}

	/**
	 * The readings of a visit as they are kept; those that it lacks are null.
	 */
	public static Readings readings(JsonNode node) {
		return new Readings(node.has("girth") ? girth(node.path("girth")) : null,
				node.has("height") ? height(node.path("height")) : null,
				node.has("crown") ? crown(node.path("crown")) : null);
	}

	/**
	 * Reads a girth reading.
	 * @throws InvalidEntries with all that is wrong with it
	 */
	public static GirthReading girth(JsonNode node) {
		return (GirthReading) read(node, GIRTH);
	}

	/**
	 * Reads a height reading, also one taken over from an older record.
	 * @throws InvalidEntries with all that is wrong with it
	 */
	public static HeightReading height(JsonNode node) {
		return (HeightReading) read(node, HEIGHT);
	}

	/**
	 * Reads a crown reading, also one taken over from an older record.
	 * @throws InvalidEntries with all that is wrong with it
	 */
	public static CrownReading crown(JsonNode node) {
		return (CrownReading) read(node, CROWN);
	}

	/** As {@link #height}, but only by a method that people may file today. */
	static HeightReading filedHeight(JsonNode node) {
		return (HeightReading) read(node, FILED_HEIGHT);
	}

	/** As {@link #crown}, but only by a method that people may file today. */
	static CrownReading filedCrown(JsonNode node) {
		return (CrownReading) read(node, FILED_CROWN);
	}

	static Length length(JsonNode node) {
		Entries entries = new Entries();
		return checked(entries.length(node, "#"), entries);
	}

	static Angle angle(JsonNode node) {
		Entries entries = new Entries();
		return checked(entries.angle(node, "#"), entries);
	}

	public static ObjectNode write(Reading reading) {
		ObjectNode node = nodes.objectNode();
		node.put("method", reading.method().code());
		writeComponents((Record) reading, node);
		return node;
	}

	public static ObjectNode write(Length length) {
		ObjectNode node = nodes.objectNode();
		if (length instanceof Length.Single single) {
			node.set("value", number(single.value()));
			node.put("unit", single.unit().code());
			putUncertainty(node, single.standardUncertainty());
		}
		else if (length instanceof Length.FeetAndInches both) {
			node.set("feet", number(both.wholeFeet()));
			node.set("inches", number(both.inchesOver()));
			putUncertainty(node, both.standardUncertainty());
		}
		else if (length instanceof Length.Segments segments) {
			ArrayNode parts = node.putArray("segments");
			segments.parts().forEach((part) -> parts.add(write(part)));
		}
		else if (length instanceof RepeatedLength repeated) {
			ArrayNode readings = node.putArray("repeats");
			repeated.readings().forEach((reading) -> readings.add(write(reading)));
		}
		else if (length instanceof SlopedLength sloped) {
			node.set("along", write(sloped.along()));
			node.set("slope", write(sloped.slope()));
		}
		return node;
	}

	public static ObjectNode write(Angle angle) {
		ObjectNode node = nodes.objectNode();
		if (angle.sights().isEmpty()) {
			node.set("value", number(angle.value()));
		}
		else {
			ArrayNode sights = node.putArray("repeats");
			angle.sights().forEach((sight) -> sights.add(number(sight)));
		}
		node.put("unit", angle.unit().code());
		putUncertainty(node, angle.standardUncertainty());
		return node;
	}

	private static Reading read(JsonNode node, Map<String, ReadingShape> shapes) {
		Entries entries = new Entries();
		return checked(entries.isObject(node, "#") ? read(node, shapes, entries) : null, entries);
	}

	private static @Nullable Reading read(JsonNode node, Map<String, ReadingShape> shapes, Entries entries) {
		JsonNode method = node.path("method");
		ReadingShape shape = method.isString() ? shapes.get(method.stringValue()) : null;
		if (shape == null) {
			entries.refuse("#/method", Entries.isAbsent(method) ? "missing" : "unknown-method",
					"must be one of " + shapes.keySet().stream().collect(Collectors.joining(", ")));
			return null;
		}
		return shape.read(node, entries);
	}

	private static <T> T checked(@Nullable T value, Entries entries) {
		entries.check();
		if (value == null) {
			throw new IllegalStateException("what was refused has no reason");
		}
		return value;
	}

	private static void writeComponents(Record values, ObjectNode node) {
		for (RecordComponent component : values.getClass().getRecordComponents()) {
			Object value = get(component, values);
			if (value instanceof Notes || value instanceof GirthNotes) {
				writeComponents((Record) value, node);
			}
			else if (value != null && !(value instanceof Collection<?> items && items.isEmpty())) {
				node.set(component.getName(), node(value));
			}
		}
	}

	private static JsonNode node(Object value) {
		if (value instanceof Length length) {
			return write(length);
		}
		if (value instanceof Angle angle) {
			return write(angle);
		}
		if (value instanceof Number number) {
			return number(number.doubleValue());
		}
		if (value instanceof List<?> items) {
			ArrayNode array = nodes.arrayNode();
			items.forEach((item) -> array.add(node(item)));
			return array;
		}
		if (value instanceof SlopeRule rule) {
			return nodes.stringNode(rule.word());
		}
		if (value instanceof String || value instanceof Instant) {
			return nodes.stringNode(value.toString());
		}
		throw new IllegalStateException("no form in JSON for " + value.getClass());
	}

	private static JsonNode number(double value) {
		return nodes.numberNode(new java.math.BigDecimal(Figures.plain(value)));
	}

	private static void putUncertainty(ObjectNode node, @Nullable Double uncertainty) {
		if (uncertainty != null) {
			node.set("standardUncertainty", number(uncertainty));
		}
	}

	private static @Nullable Object get(RecordComponent component, Record values) {
		try {
			return component.getAccessor().invoke(values);
		}
		catch (IllegalAccessException | InvocationTargetException ex) {
			throw new IllegalStateException("a component can't be read", ex);
		}
	}

	private static Map<String, ReadingShape> shapes(Class<?> kind) {
		Map<String, ReadingShape> shapes = new TreeMap<>();
		for (Class<?> type : kind.getPermittedSubclasses()) {
			shapes.put(ReadingMethods.code(type), new ReadingShape(type.asSubclass(Reading.class)));
		}
		return shapes;
	}

	private static Map<String, ReadingShape> without(Map<String, ReadingShape> shapes, Method method) {
		Map<String, ReadingShape> rest = new TreeMap<>(shapes);
		rest.remove(method.code());
		return rest;
	}

}

package county.bigtree.registry.http.quantity;

import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;

import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.AngleUnit;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;
import county.bigtree.domain.quantity.RepeatedLength;
import county.bigtree.domain.quantity.SlopedLength;
import county.bigtree.registry.problem.FieldProblem;
import county.bigtree.registry.problem.InvalidEntries;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * Reads the entries of one value and collects what is wrong with all of them, so that
 * whoever filled in a form hears of every slip at once. What can't be read comes back as
 * null, and the value must not be used before {@link #check()}.
 */
final class Entries {

	private static final int LONGEST_TEXT = 2000;

	private static final Set<String> SINGLE = Set.of("value", "unit", "standardUncertainty");

	private static final Set<String> SIGHTS = Set.of("repeats", "unit", "standardUncertainty");

	private static final Set<String> FEET_AND_INCHES = Set.of("feet", "inches", "standardUncertainty");

	private final List<FieldProblem> problems = new ArrayList<>();

	/** Throws if anything was found. */
	void check() {
		if (!this.problems.isEmpty()) {
			throw new InvalidEntries(this.problems);
		}
	}

	boolean isSound() {
		return this.problems.isEmpty();
	}

	void refuse(String pointer, String code, String detail) {
		this.problems.add(new FieldProblem(pointer, code, detail));
	}

	/** Takes what the domain makes of entries that could be read, or its refusal. */
	<T> @Nullable T make(String pointer, Supplier<T> maker) {
		try {
			return maker.get();
		}
		catch (InvalidReadingException ex) {
			refuse(ex.path().isEmpty() ? pointer : pointer + "/" + ex.path(), ex.code(), ex.detail());
			return null;
		}
	}

	@Nullable Length length(JsonNode node, String pointer) {
		if (!isObject(node, pointer)) {
			return null;
		}
		if (node.has("segments")) {
			return lengths(node, pointer, "segments", Length.Segments::new);
		}
		if (node.has("repeats")) {
			return lengths(node, pointer, "repeats", RepeatedLength::new);
		}
		if (node.has("along") || node.has("slope")) {
			return sloped(node, pointer);
		}
		if (node.has("feet") || node.has("inches")) {
			refuseOthers(node, pointer, FEET_AND_INCHES);
			Double feet = needed(node, pointer, "feet");
			Double inches = needed(node, pointer, "inches");
			Double uncertainty = number(node.path("standardUncertainty"), pointer + "/standardUncertainty");
			return (feet != null && inches != null)
					? make(pointer, () -> new Length.FeetAndInches(feet, inches, uncertainty)) : null;
		}
		refuseOthers(node, pointer, SINGLE);
		Double value = needed(node, pointer, "value");
		LengthUnit unit = unit(node, pointer, LengthUnit.values(), LengthUnit::code);
		Double uncertainty = number(node.path("standardUncertainty"), pointer + "/standardUncertainty");
		return (value != null && unit != null) ? make(pointer, () -> new Length.Single(value, unit, uncertainty))
				: null;
	}

	private @Nullable Length lengths(JsonNode node, String pointer, String field,
			Function<List<Length>, Length> maker) {
		refuseOthers(node, pointer, Set.of(field));
		List<Length> parts = list(node.get(field), pointer + "/" + field, this::length);
		return (parts != null) ? make(pointer, () -> maker.apply(parts)) : null;
	}

	private @Nullable Length sloped(JsonNode node, String pointer) {
		refuseOthers(node, pointer, Set.of("along", "slope"));
		Length along = length(node.path("along"), pointer + "/along");
		Angle slope = angle(node.path("slope"), pointer + "/slope");
		return (along != null && slope != null) ? make(pointer, () -> new SlopedLength(along, slope)) : null;
	}

	@Nullable Angle angle(JsonNode node, String pointer) {
		if (!isObject(node, pointer)) {
			return null;
		}
		boolean repeated = node.has("repeats");
		refuseOthers(node, pointer, repeated ? SIGHTS : SINGLE);
		AngleUnit unit = unit(node, pointer, AngleUnit.values(), AngleUnit::code);
		Double uncertainty = number(node.path("standardUncertainty"), pointer + "/standardUncertainty");
		if (repeated) {
			List<Double> sights = list(node.path("repeats"), pointer + "/repeats", this::sight);
			return (sights != null && unit != null) ? make(pointer, () -> Angle.repeated(sights, unit, uncertainty))
					: null;
		}
		Double value = needed(node, pointer, "value");
		return (value != null && unit != null) ? make(pointer, () -> new Angle(value, unit, uncertainty)) : null;
	}

	private @Nullable Double sight(JsonNode node, String pointer) {
		if (isAbsent(node)) {
			refuse(pointer, "missing", "must be given");
		}
		return number(node, pointer);
	}

	/** Null also where nothing is given. */
	@Nullable Double number(JsonNode node, String pointer) {
		if (isAbsent(node)) {
			return null;
		}
		if (!node.isNumber()) {
			refuse(pointer, "wrong-type", "must be a number");
			return null;
		}
		// A decimal beyond all doubles becomes infinite here, and is refused as that.
		return (node.isBigDecimal() || node.isBigInteger()) ? Double.valueOf(node.decimalValue().doubleValue())
				: Double.valueOf(node.doubleValue());
	}

	@Nullable Integer count(JsonNode node, String pointer) {
		if (!node.isIntegralNumber() || !node.canConvertToInt()) {
			refuse(pointer, "wrong-type", "must be a whole number");
			return null;
		}
		return node.intValue();
	}

	@Nullable Instant instant(JsonNode node, String pointer) {
		try {
			if (node.isString()) {
				return Instant.parse(node.stringValue());
			}
		}
		catch (DateTimeException ex) {
			// refused below
		}
		refuse(pointer, "wrong-form", "must be an instant such as 2026-05-02T17:40:00Z");
		return null;
	}

	/** Null also where nothing is given. */
	@Nullable String text(JsonNode node, String pointer) {
		if (isAbsent(node)) {
			return null;
		}
		if (!node.isString()) {
			refuse(pointer, "wrong-type", "must be a text");
			return null;
		}
		String text = node.stringValue();
		if (text.length() > LONGEST_TEXT) {
			refuse(pointer, "wrong-length",
					"must have at most " + LONGEST_TEXT + " characters but has " + text.length());
		}
		return text;
	}

	<T> @Nullable List<T> list(JsonNode node, String pointer, BiFunction<JsonNode, String, @Nullable T> reader) {
		if (!node.isArray()) {
			refuse(pointer, "wrong-type", "must be a list");
			return null;
		}
		List<T> items = new ArrayList<>();
		int index = 0;
		for (JsonNode each : node) {
			T item = reader.apply(each, pointer + "/" + index++);
			if (item != null) {
				items.add(item);
			}
		}
		return (items.size() == index) ? items : null;
	}

	boolean isObject(JsonNode node, String pointer) {
		if (!node.isObject()) {
			refuse(pointer, "wrong-type", "must be an object");
		}
		return node.isObject();
	}

	void refuseOthers(JsonNode node, String pointer, Set<String> known) {
		for (String name : node.propertyNames()) {
			if (!known.contains(name)) {
				refuse(FieldProblem.child(pointer, name), "unknown-field",
						"is not known here; known are " + known.stream().sorted().collect(Collectors.joining(", ")));
			}
		}
	}

	static boolean isAbsent(JsonNode node) {
		return node.isMissingNode() || node.isNull();
	}

	private @Nullable Double needed(JsonNode node, String pointer, String name) {
		if (isAbsent(node.path(name))) {
			refuse(pointer + "/" + name, "missing", "must be given");
			return null;
		}
		return number(node.path(name), pointer + "/" + name);
	}

	private <U> @Nullable U unit(JsonNode node, String pointer, U[] units, Function<U, String> code) {
		JsonNode given = node.path("unit");
		for (U unit : units) {
			if (given.isString() && code.apply(unit).equals(given.stringValue())) {
				return unit;
			}
		}
		refuse(pointer + "/unit", isAbsent(given) ? "missing" : "unknown-unit",
				"must be one of " + Arrays.stream(units).map(code).collect(Collectors.joining(", ")));
		return null;
	}

}

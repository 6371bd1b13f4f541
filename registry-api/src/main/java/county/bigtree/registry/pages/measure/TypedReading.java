package county.bigtree.registry.pages.measure;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import county.bigtree.domain.measuring.Kind;
import county.bigtree.domain.measuring.Reading;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.LengthText;
import county.bigtree.domain.quantity.LengthUnit;
import county.bigtree.registry.http.quantity.ReadingsJson;
import county.bigtree.registry.problem.FieldProblem;
import county.bigtree.registry.problem.InvalidEntries;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * What was typed for one figure: the reading it comes to, or what is wrong with which
 * input. Lengths may be written as people do ({@code 12' 3 1/2"}); a bare number has the
 * unit chosen beside it. What was typed is kept as it was.
 */
public final class TypedReading {

	private static final JsonNodeFactory nodes = JsonNodeFactory.instance;

	private final Kind kind;

	private final MethodForm form;

	private final Map<String, String> typed;

	private final Map<String, String> errors = new LinkedHashMap<>();

	private final @Nullable Reading reading;

	private TypedReading(Kind kind, MethodForm form, Map<String, String> typed) {
		this.kind = kind;
		this.form = form;
		this.typed = typed;
		this.reading = isEmpty() ? null : read();
	}

	/**
	 * Reads one figure's part of the form.
	 * @param figure names the part: girth, height or crown
	 * @param parameters of the request; others than this part's are passed over
	 */
	static TypedReading of(Kind kind, String figure, Map<String, String> parameters) {
		Map<String, String> typed = new LinkedHashMap<>();
		String part = figure + ".";
		parameters.forEach((name, value) -> {
			if (name.startsWith(part)) {
				typed.put(name.substring(part.length()), value.strip());
			}
		});
		return new TypedReading(kind, MethodForm.find(kind, parameters.getOrDefault(figure, "")), typed);
	}

	public MethodForm form() {
		return this.form;
	}

	/** Whether nothing was typed. */
	public boolean isEmpty() {
		return this.form.fields()
			.stream()
			.flatMap((field) -> field.inputs().stream())
			.allMatch((input) -> typed(input).isEmpty());
	}

	public String typed(String input) {
		return this.typed.getOrDefault(input, "");
	}

	/** The unit chosen beside an entry. */
	public String unit(FormField field) {
		String chosen = typed(field.name() + ".unit");
		return field.units().contains(chosen) ? chosen : field.unit();
	}

	/** What is wrong, by input. */
	public Map<String, String> errors() {
		return this.errors;
	}

	public @Nullable Reading reading() {
		return this.reading;
	}

	public @Nullable Estimate estimate() {
		return (this.reading != null) ? this.reading.estimate() : null;
	}

	private @Nullable Reading read() {
		ObjectNode node = nodes.objectNode();
		node.put("method", this.form.method().code());
		this.form.fields().forEach((field) -> put(field, node));
		if (!this.errors.isEmpty()) {
			return null;
		}
		try {
			Reading read = make(node);
			read.estimate();
			return read;
		}
		catch (InvalidEntries ex) {
			ex.errors().forEach(this::note);
		}
		catch (InvalidReadingException ex) {
			note(new FieldProblem("#/" + ex.path(), ex.code(), ex.detail()));
		}
		return null;
	}

	private Reading make(JsonNode node) {
		return switch (this.kind) {
			case GIRTH -> ReadingsJson.girth(node);
			case HEIGHT -> ReadingsJson.height(node);
			case CROWN -> ReadingsJson.crown(node);
		};
	}

	private void put(FormField field, ObjectNode node) {
		List<JsonNode> entries = new ArrayList<>();
		for (String input : field.inputs()) {
			if (!typed(input).isEmpty()) {
				JsonNode entry = entry(field, input);
				if (entry != null) {
					entries.add(entry);
				}
			}
		}
		if (!entries.isEmpty() && entries.size() < field.least() && this.errors.isEmpty()) {
			field.inputs()
				.stream()
				.filter((input) -> typed(input).isEmpty())
				.findFirst()
				.ifPresent(
						(input) -> this.errors.put(input, "At least %d of these are needed.".formatted(field.least())));
		}
		if (field.list()) {
			ArrayNode list = node.putArray(field.name());
			entries.forEach(list::add);
		}
		else if (!entries.isEmpty()) {
			node.set(field.name(), entries.get(0));
		}
	}

	private @Nullable JsonNode entry(FormField field, String input) {
		try {
			return switch (field.kind()) {
				case LENGTH -> ReadingsJson.write(LengthText.read(typed(input), lengthUnit(field)));
				case ANGLE -> nodes.objectNode().put("value", LengthText.number(typed(input))).put("unit", unit(field));
				case COUNT -> nodes.numberNode((int) Math.rint(LengthText.number(typed(input))));
			};
		}
		catch (InvalidReadingException ex) {
			this.errors.put(input, ex.detail());
			return null;
		}
	}

	private LengthUnit lengthUnit(FormField field) {
		String unit = unit(field);
		for (LengthUnit one : LengthUnit.values()) {
			if (one.code().equals(unit)) {
				return one;
			}
		}
		throw new IllegalStateException("no unit " + unit);
	}

	/** At the input that the pointer leads to, or at the first of the form. */
	private void note(FieldProblem error) {
		String[] steps = error.pointer().replaceFirst("^#/", "").split("/");
		FormField at = this.form.fields()
			.stream()
			.filter((field) -> field.name().equals(steps[0]))
			.findFirst()
			.orElse(this.form.fields().get(0));
		int place = (at.list() && steps.length > 1 && steps[1].matches("\\d{1,2}")) ? Integer.parseInt(steps[1]) : 0;
		this.errors.putIfAbsent(filled(at, place), error.detail());
	}

	/** The input of a list's entry: empty ones are passed over. */
	private String filled(FormField field, int place) {
		List<String> filled = field.inputs().stream().filter((input) -> !typed(input).isEmpty()).toList();
		return (place < filled.size()) ? filled.get(place) : field.inputs().get(0);
	}

}

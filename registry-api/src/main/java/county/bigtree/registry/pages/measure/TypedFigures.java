package county.bigtree.registry.pages.measure;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import county.bigtree.domain.measuring.CrownReading;
import county.bigtree.domain.measuring.FigureMethods;
import county.bigtree.domain.measuring.GirthReading;
import county.bigtree.domain.measuring.HeightReading;
import county.bigtree.domain.measuring.Kind;
import county.bigtree.domain.measuring.Method;
import county.bigtree.domain.measuring.Reading;
import county.bigtree.domain.measuring.Readings;
import county.bigtree.domain.points.Score;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.registry.http.quantity.ReadingsJson;
import county.bigtree.registry.pages.Units;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.node.ObjectNode;

import org.springframework.ui.Model;

/**
 * What was typed for the three figures of a tree. Each part of the form is named by its
 * figure: girth, height, crown.
 *
 * @param byName in that order
 * @param parameters all that was typed, also for methods that are not chosen now
 */
public record TypedFigures(Map<String, TypedReading> byName, Map<String, String> parameters) {

	/** The figures in the order in which they are measured. */
	public static final List<String> NAMES = List.of("girth", "height", "crown");

	private static final String UNIT = ".unit";

	private static final Map<String, Kind> KINDS = Map.of("girth", Kind.GIRTH, "height", Kind.HEIGHT, "crown",
			Kind.CROWN);

	/**
	 * Reads the parts of a form.
	 * @param parameters of the request; those of no figure are passed over
	 * @param units those to propose
	 */
	public static TypedFigures of(Map<String, String> parameters, Units units) {
		Map<String, String> all = new LinkedHashMap<>(parameters);
		if (units.metric()) {
			NAMES.forEach((name) -> metric(name, all));
		}
		Map<String, TypedReading> figures = new LinkedHashMap<>();
		NAMES.forEach((name) -> figures.put(name, TypedReading.of(kind(name), name, all)));
		return new TypedFigures(figures, Map.copyOf(all));
	}

	/** Proposes metric units where none was chosen. */
	private static void metric(String figure, Map<String, String> parameters) {
		MethodForm.of(kind(figure))
			.stream()
			.flatMap((form) -> form.fields().stream())
			.filter((field) -> field.kind() == FormField.Kind.LENGTH)
			.forEach((field) -> parameters.putIfAbsent(figure + "." + field.name() + UNIT,
					field.unit().equals("in") ? "cm" : "m"));
	}

	private static Kind kind(String figure) {
		return Objects.requireNonNull(KINDS.get(figure));
	}

	/** The forms to choose from for a figure, the simplest first. */
	public List<MethodForm> forms(String figure) {
		return MethodForm.of(kind(figure));
	}

	public TypedReading get(String figure) {
		return Objects.requireNonNull(this.byName.get(figure));
	}

	/** A form of the figure with nothing typed into it. */
	public TypedReading blank(String figure, MethodForm form) {
		Map<String, String> units = new LinkedHashMap<>(Map.of(figure, form.key()));
		this.parameters.forEach((name, value) -> {
			if (name.endsWith(UNIT)) {
				units.put(name, value);
			}
		});
		return TypedReading.of(kind(figure), figure, units);
	}

	/**
	 * What was typed for other methods of the figure: kept, so that going back to one
	 * finds it again.
	 */
	public Map<String, String> kept(String figure) {
		Set<String> present = get(figure).form()
			.fields()
			.stream()
			.flatMap((field) -> Stream.concat(field.inputs().stream(), Stream.of(field.name() + UNIT)))
			.map((input) -> figure + "." + input)
			.collect(Collectors.toSet());
		Map<String, String> kept = new TreeMap<>();
		this.parameters.forEach((name, value) -> {
			if (name.startsWith(figure + ".") && !present.contains(name) && !value.isBlank() && isOfUse(name)) {
				kept.put(name, value);
			}
		});
		return kept;
	}

	/** A unit alone is not. */
	private boolean isOfUse(String name) {
		String entry = name.replaceFirst("\\.unit$", "");
		return entry.equals(name) || this.parameters.keySet()
			.stream()
			.anyMatch((one) -> !one.equals(name) && one.startsWith(entry)
					&& !Objects.requireNonNull(this.parameters.get(one)).isBlank());
	}

	/** What a figure comes to, as it deserves to be written; null where it does not. */
	public @Nullable String shown(String figure, Units units) {
		Estimate estimate = get(figure).estimate();
		if (estimate == null) {
			return null;
		}
		return (kind(figure) == Kind.GIRTH) ? estimate.times(units.girth(1)).shown(units.girthUnit())
				: estimate.times(units.length(1)).shown(units.lengthUnit());
	}

	/** The methods chosen. */
	FigureMethods methods() {
		return new FigureMethods(method("girth"), method("height"), method("crown"));
	}

	private Method method(String figure) {
		return get(figure).form().method();
	}

	/** What is wrong, by the names of the fields. */
	public Map<String, String> errors() {
		Map<String, String> errors = new LinkedHashMap<>();
		this.byName.forEach(
				(figure, typed) -> typed.errors().forEach((input, detail) -> errors.put(figure + "." + input, detail)));
		return errors;
	}

	/** All readings that come to a figure; null where none does. */
	public @Nullable Readings readings() {
		Reading girth = get("girth").reading();
		Reading height = get("height").reading();
		Reading crown = get("crown").reading();
		return (girth == null && height == null && crown == null) ? null
				: new Readings((GirthReading) girth, (HeightReading) height, (CrownReading) crown);
	}

	/** What they come to together; empty where one is lacking. */
	public Optional<Score> score() {
		Readings readings = readings();
		return (readings != null) ? readings.reduce().score() : Optional.empty();
	}

	/** Puts the readings into a measurement as the API takes it. */
	public void put(ObjectNode measurement) {
		this.byName.forEach((figure, typed) -> {
			Reading reading = typed.reading();
			if (reading != null) {
				measurement.set(figure, ReadingsJson.write(reading));
			}
		});
	}

	/** Puts what was typed, and what it comes to, into a page. */
	public void show(Model model) {
		model.addAttribute("figures", this);
		Readings readings = readings();
		if (readings != null) {
			model.addAttribute("working", readings.working());
			model.addAttribute("cautions", readings.cautions());
			score().ifPresent((score) -> model.addAttribute("score", score));
		}
	}

}

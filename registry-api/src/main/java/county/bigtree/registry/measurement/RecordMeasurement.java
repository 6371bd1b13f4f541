package county.bigtree.registry.measurement;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import county.bigtree.domain.measuring.Readings;
import county.bigtree.domain.measuring.Reduced;
import county.bigtree.domain.points.Score;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.registry.http.quantity.ReadingsJson;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.problem.FieldProblem;
import county.bigtree.registry.problem.Problem;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

import org.springframework.stereotype.Component;

/**
 * Appends a measurement and what its readings reduce to.
 */
@Component
public class RecordMeasurement {

	private final Facts facts;

	private final Texts texts;

	private final JsonMapper json;

	RecordMeasurement(Facts facts, Texts texts, JsonMapper json) {
		this.facts = facts;
		this.texts = texts;
		this.json = json;
	}

	/**
	 * Appends the measurement under the change.
	 * @param change the change
	 * @param tree the tree that was measured
	 * @param body what was filed
	 * @param filedBy who filed it
	 * @param basis on what it rests
	 * @param pointer where the body stands in the request
	 * @return the measurement's id
	 * @throws Problem of invalid input, with all that is wrong
	 */
	public UUID record(Change change, UUID tree, MeasurementBody body, UUID filedBy, Basis basis, String pointer) {
		return record(change, tree, body, filedBy, basis, null, pointer);
	}

	/**
	 * Appends a measurement that may be carried over from an older record.
	 * @param carriedOverFrom what the older record is
	 */
	public UUID record(Change change, UUID tree, MeasurementBody body, UUID filedBy, Basis basis,
			@Nullable String carriedOverFrom, String pointer) {
		LocalDate measuredOn = check(body, change.today(), pointer);
		Readings readings = new Readings(body.girth(), body.height(), body.crown());
		Reduced reduced = reduce(readings, pointer);
		UUID id = Uuid7.next();
		List<JsonNode> measurers = (body.measuredBy() != null) ? body.measuredBy() : List.of();
		List<String> checks = (body.confirmedChecks() != null) ? body.confirmedChecks() : List.of();
		this.facts.append(change, FactTable.MEASUREMENT, "id", id, "tree", tree, "measured_on", measuredOn, "filed_by",
				filedBy, "basis", basis.word(), "carried_over_from", carriedOverFrom, "measurers",
				this.texts.keepAlways(change, this.json.writeValueAsString(measurers)), "readings",
				this.json.writeValueAsString(asEntered(body)), "confirmed_checks", this.json.writeValueAsString(checks),
				"remarks", this.texts.keep(change, body.remarks()));
		append(change, id, reduced);
		return id;
	}

	private void append(Change change, UUID measurement, Reduced reduced) {
		Score score = reduced.score().orElseThrow();
		Estimate girth = reduced.girthInches();
		Estimate height = reduced.heightFeet();
		Estimate crown = reduced.crownSpreadFeet();
		if (girth == null || height == null || crown == null) {
			throw new IllegalStateException("A score without all three figures");
		}
		this.facts.append(change, FactTable.REDUCTION, "measurement", measurement, "version", reduced.version(),
				"girth_inches", girth.value(), "girth_u", girth.standardUncertainty(), "height_feet", height.value(),
				"height_u", height.standardUncertainty(), "crown_feet", crown.value(), "crown_u",
				crown.standardUncertainty(), "points", score.points().toBigDecimal(), "points_u",
				score.standardUncertainty());
	}

	private ObjectNode asEntered(MeasurementBody body) {
		ObjectNode node = this.json.createObjectNode();
		if (body.girth() != null) {
			node.set("girth", ReadingsJson.write(body.girth()));
		}
		if (body.height() != null) {
			node.set("height", ReadingsJson.write(body.height()));
		}
		if (body.crown() != null) {
			node.set("crown", ReadingsJson.write(body.crown()));
		}
		return node;
	}

	private static LocalDate check(MeasurementBody body, LocalDate today, String pointer) {
		List<FieldProblem> errors = new ArrayList<>();
		missing(errors, pointer, "girth", body.girth());
		missing(errors, pointer, "height", body.height());
		missing(errors, pointer, "crown", body.crown());
		LocalDate measuredOn = body.measuredOn();
		missing(errors, pointer, "measuredOn", measuredOn);
		if (measuredOn != null && (measuredOn.isAfter(today) || measuredOn.isBefore(Rulebook.BEGINNING))) {
			errors.add(new FieldProblem(FieldProblem.child(pointer, "measuredOn"), "out-of-range",
					"must be from %s to today, %s".formatted(Rulebook.BEGINNING, today)));
		}
		if (!errors.isEmpty() || measuredOn == null) {
			throw Problem.invalid(errors);
		}
		return measuredOn;
	}

	private static void missing(List<FieldProblem> errors, String pointer, String field, @Nullable Object value) {
		if (value == null) {
			errors.add(new FieldProblem(FieldProblem.child(pointer, field), "missing", "is needed"));
		}
	}

	private static Reduced reduce(Readings readings, String pointer) {
		try {
			return readings.reduce();
		}
		catch (InvalidReadingException ex) {
			throw Problem.invalid(pointer + (ex.path().isEmpty() ? "" : "/" + ex.path()), ex.code(), ex.detail());
		}
	}

}

package county.bigtree.registry.measurement;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;

import county.bigtree.domain.check.Finding;
import county.bigtree.domain.measuring.Readings;
import county.bigtree.domain.measuring.Reduced;
import county.bigtree.domain.points.Score;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.domain.rulebook.CarryForward;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.registry.check.CheckFilings;
import county.bigtree.registry.check.Filing;
import county.bigtree.registry.check.FindingJson;
import county.bigtree.registry.http.quantity.ReadingsJson;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.problem.FieldProblem;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.rules.RulesReader;
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

	private final RulesReader rules;

	private final CheckFilings checks;

	RecordMeasurement(Facts facts, Texts texts, JsonMapper json, RulesReader rules, CheckFilings checks) {
		this.facts = facts;
		this.texts = texts;
		this.json = json;
		this.rules = rules;
		this.checks = checks;
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
	 * @throws Problem of invalid input, with all that is wrong, or of checks that were
	 * not answered
	 */
	public UUID record(Change change, UUID tree, MeasurementBody body, UUID filedBy, Basis basis, String pointer) {
		return record(change, tree, body, filedBy, basis, null, pointer,
				(filing) -> this.checks.answered(change, filing));
	}

	/**
	 * Appends a measurement that is carried over from an older record.
	 * @param scientificName of the tree's species; null to look it up
	 * @param from what the older record is
	 */
	public UUID carryOver(Change change, UUID tree, @Nullable String scientificName, MeasurementBody body, UUID filedBy,
			String from, String pointer) {
		return record(change, tree, body, filedBy, Basis.CARRIED_OVER, from, pointer,
				(filing) -> (scientificName != null) ? this.checks.noted(change, filing, scientificName)
						: this.checks.noted(change, filing));
	}

	private UUID record(Change change, UUID tree, MeasurementBody body, UUID filedBy, Basis basis,
			@Nullable String carriedOverFrom, String pointer, Function<Filing, List<Finding>> checks) {
		KnownDay measuredOn = check(body, change.today(), pointer);
		Readings readings = new Readings(body.girth(), body.height(), body.crown());
		Reduced reduced = reduce(readings, pointer);
		UUID id = Uuid7.next();
		List<JsonNode> measurers = (body.measuredBy() != null) ? body.measuredBy() : List.of();
		List<String> confirmed = (body.confirmedChecks() != null) ? body.confirmedChecks() : List.of();
		List<Finding> findings = checks.apply(new Filing(tree, filedBy, measuredOn.last(), readings, reduced,
				basis == Basis.CHECKED, body.remarks(), confirmed));
		CarryForward carries = carries(change, measuredOn.last(), reduced);
		this.facts.append(change, FactTable.MEASUREMENT, "id", id, "tree", tree, "measured_on", measuredOn.last(),
				"measured_on_known_to", knownTo(measuredOn), "carry_height_years",
				(carries != null) ? carries.heightYears() : null, "carry_crown_years",
				(carries != null) ? carries.crownYears() : null, "filed_by", filedBy, "basis", basis.word(),
				"carried_over_from", carriedOverFrom, "measurers",
				this.texts.keepAlways(change, this.json.writeValueAsString(measurers)), "readings",
				this.json.writeValueAsString(asEntered(body)), "confirmed_checks",
				this.json.writeValueAsString(confirmed), "checks",
				findings.isEmpty() ? null : this.json.writeValueAsString(FindingJson.of(findings)), "remarks",
				this.texts.keep(change, body.remarks()));
		append(change, id, reduced);
		return id;
	}

	/**
	 * Appends what the readings of a measurement come to.
	 */
	void append(Change change, UUID measurement, Reduced reduced) {
		Score score = reduced.score().orElse(null);
		this.facts.append(change, FactTable.REDUCTION, "measurement", measurement, "version", reduced.version(),
				"girth_inches", value(reduced.girthInches()), "girth_u", uncertainty(reduced.girthInches()),
				"height_feet", value(reduced.heightFeet()), "height_u", uncertainty(reduced.heightFeet()), "crown_feet",
				value(reduced.crownSpreadFeet()), "crown_u", uncertainty(reduced.crownSpreadFeet()), "points",
				(score != null) ? score.points().toBigDecimal() : null, "points_u",
				(score != null) ? score.standardUncertainty() : null);
	}

	private static @Nullable Double value(@Nullable Estimate estimate) {
		return (estimate != null) ? Double.valueOf(estimate.value()) : null;
	}

	private static @Nullable Double uncertainty(@Nullable Estimate estimate) {
		return (estimate != null) ? Double.valueOf(estimate.standardUncertainty()) : null;
	}

	/**
	 * For how long earlier figures stand in for those that it lacks: the rules of its
	 * day, as known now, say it once for all.
	 */
	private @Nullable CarryForward carries(Change change, LocalDate measuredOn, Reduced reduced) {
		return reduced.score().isPresent() ? null
				: this.rules.get(change.county()).on(measuredOn, change.recordedAt()).carryForward();
	}

	private static @Nullable String knownTo(KnownDay day) {
		return switch (day.precision()) {
			case DAY -> null;
			case MONTH -> "month";
			case YEAR -> "year";
		};
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

	private static KnownDay check(MeasurementBody body, LocalDate today, String pointer) {
		List<FieldProblem> errors = new ArrayList<>();
		if (body.girth() == null && body.height() == null && body.crown() == null) {
			errors.add(new FieldProblem(pointer, "missing", "needs a girth, a height or a crown reading"));
		}
		KnownDay measuredOn = body.measuredOn();
		if (measuredOn == null) {
			errors.add(new FieldProblem(FieldProblem.child(pointer, "measuredOn"), "missing", "is needed"));
		}
		else if (measuredOn.last().isAfter(today) || measuredOn.last().isBefore(Rulebook.BEGINNING)) {
			errors.add(new FieldProblem(FieldProblem.child(pointer, "measuredOn"), "out-of-range",
					"must be over: from %s to today, %s".formatted(Rulebook.BEGINNING, today)));
		}
		if (!errors.isEmpty() || measuredOn == null) {
			throw Problem.invalid(errors);
		}
		return measuredOn;
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

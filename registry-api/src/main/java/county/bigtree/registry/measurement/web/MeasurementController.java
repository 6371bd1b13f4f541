package county.bigtree.registry.measurement.web;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.Valid;
import county.bigtree.registry.measurement.MeasurementMove;
import county.bigtree.registry.measurement.MoveMeasurement;
import county.bigtree.registry.http.IfMatch;
import county.bigtree.registry.http.DryRun;
import java.net.URI;
import java.util.List;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.measurement.FileRemeasurement;
import county.bigtree.registry.measurement.MeasurementBody;
import county.bigtree.registry.measurement.MeasurementJson;
import county.bigtree.registry.measurement.ReadMeasurements;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.tree.TreeDirectory;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/**
 * Measurements of a tree.
 */
@RestController
@Tag(name = "Measurements", description = "Measurements of a tree: readings as entered, what they reduce to, and how.")
class MeasurementController {

	private final ReadMeasurements measurements;

	private final FileRemeasurement filing;

	private final MoveMeasurement moving;

	private final TreeDirectory trees;

	MeasurementController(ReadMeasurements measurements, FileRemeasurement filing, MoveMeasurement moving,
			TreeDirectory trees) {
		this.measurements = measurements;
		this.filing = filing;
		this.moving = moving;
		this.trees = trees;
	}

	@GetMapping("/api/v1/trees/{tree}/measurements")
	@Access(Who.ANYONE)
	@Operation(operationId = "listMeasurements",
			summary = "The measurements of a tree: those that count or counted, one's own, and all for the county's verifiers")
	Page<MeasurementJson> list(@PathVariable String tree, @Nullable Actor actor) {
		TreeDirectory.KnownTree known = this.trees.getShown(tree, actor);
		boolean insider = actor != null && this.trees.mayVerify(actor, known);
		List<ReadMeasurements.Measurement> shown = this.measurements.of(known.id())
			.stream()
			.filter((one) -> insider || isPublic(one) || filed(actor, one))
			.toList();
		if (!known.accepted() && !insider && shown.stream().noneMatch((one) -> filed(actor, one))) {
			throw Problem.notFound("No tree has this id or tag.");
		}
		return Page.whole(shown.stream()
			.map((one) -> insider || filed(actor, one) ? json(one) : json(one).toThePublic())
			.toList());
	}

	private static boolean isPublic(ReadMeasurements.Measurement one) {
		return one.status().equals("counting") || one.status().equals("superseded");
	}

	private static boolean filed(@Nullable Actor actor, ReadMeasurements.Measurement one) {
		return actor != null && one.filedBy().equals(actor.id());
	}

	@PostMapping("/api/v1/trees/{tree}/measurements")
	@ResponseStatus(HttpStatus.CREATED)
	@Access(Who.VOLUNTEER)
	@Operation(operationId = "fileRemeasurement", summary = "File a remeasurement")
	ResponseEntity<MeasurementJson> file(@PathVariable String tree, @RequestBody MeasurementBody body, Actor actor) {
		UUID id = this.filing.file(actor, tree, body);
		return ResponseEntity.created(URI.create("/api/v1/measurements/" + id)).body(json(this.measurements.get(id)));
	}

	@GetMapping("/api/v1/measurements/{id}")
	@Access(Who.VOLUNTEER)
	@Operation(operationId = "getMeasurement", summary = "A measurement, for who filed it and the county's verifiers")
	MeasurementJson get(@PathVariable UUID id, Actor actor) {
		ReadMeasurements.Measurement found = this.measurements.get(id);
		if (!found.filedBy().equals(actor.id()) && !this.trees.mayVerify(actor, this.trees.get(found.tree()))) {
			throw Problem.notFound("No measurement has this id.");
		}
		return json(found);
	}

	@PostMapping("/api/v1/measurements/{id}/moves")
	@DryRun
	@Access(Who.VOLUNTEER)
	@Operation(operationId = "moveMeasurement",
			summary = "Move a filed remeasurement: assign, reassign, hand-back, withdraw, reopen")
	MeasurementJson move(@PathVariable UUID id, @RequestBody @Valid MoveBody body, IfMatch ifMatch, Actor actor) {
		get(id, actor);
		MeasurementMove move = MeasurementMove.find(body.move())
			.orElseThrow(() -> Problem.invalid("#/move", "unknown",
					"must be assign, reassign, hand-back, withdraw or reopen"));
		this.moving.move(actor, id, move, body.verifier(), body.reason(),
				(revision) -> ifMatch.require(revision, () -> get(id, actor)));
		return json(this.measurements.get(id));
	}

	/**
	 * A move.
	 *
	 * @param verifier to whom it goes, for assign and reassign
	 */
	record MoveBody(@NotNull String move, @Nullable UUID verifier, @Nullable String reason) {
	}

	private MeasurementJson json(ReadMeasurements.Measurement measurement) {
		return this.measurements.json(measurement);
	}

}

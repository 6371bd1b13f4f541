package county.bigtree.registry.signoff.web;

import county.bigtree.registry.http.DryRun;
import java.net.URI;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.IfMatch;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.measurement.MeasurementJson;
import county.bigtree.registry.measurement.ReadMeasurements;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.signoff.AssentToTitle;
import county.bigtree.registry.signoff.GiveSignOff;
import county.bigtree.registry.signoff.SignOffBody;
import county.bigtree.registry.signoff.SignOffs;
import county.bigtree.registry.signoff.TakeBack;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
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
 * Sign-offs, and taking back what counted.
 */
@RestController
@Tag(name = "Sign-offs", description = "What verifiers say of a measurement, and taking back what counted.")
class SignOffController {

	private final GiveSignOff giveSignOff;

	private final AssentToTitle assentToTitle;

	private final TakeBack takeBack;

	private final SignOffs signOffs;

	private final ReadMeasurements measurements;

	SignOffController(GiveSignOff giveSignOff, AssentToTitle assentToTitle, TakeBack takeBack, SignOffs signOffs,
			ReadMeasurements measurements) {
		this.assentToTitle = assentToTitle;
		this.giveSignOff = giveSignOff;
		this.takeBack = takeBack;
		this.signOffs = signOffs;
		this.measurements = measurements;
	}

	@PostMapping("/api/v1/measurements/{id}/sign-offs")
	@ResponseStatus(HttpStatus.CREATED)
	@DryRun
	@Access(Who.VERIFIER_OR_GUEST)
	@Operation(operationId = "signOff", summary = "Sign off on a measurement")
	ResponseEntity<SignOffs.SignOff> give(@PathVariable UUID id, @RequestBody @Valid SignOffBody body, Actor actor) {
		UUID signOff = this.giveSignOff.give(actor, id, body);
		return ResponseEntity.created(URI.create("/api/v1/sign-offs/" + signOff)).body(this.signOffs.get(signOff));
	}

	@GetMapping("/api/v1/trees/{tree}/sign-offs")
	@Access(Who.VERIFIER)
	@Operation(operationId = "listSignOffs",
			summary = "The sign-offs on the measurements of a tree, for the verifiers of its county")
	Page<SignOffs.SignOff> list(@PathVariable String tree, Actor actor) {
		return Page.whole(this.giveSignOff.list(actor, tree));
	}

	@GetMapping("/api/v1/sign-offs/{id}")
	@Access(Who.VERIFIER_OR_GUEST)
	@Operation(operationId = "getSignOff",
			summary = "A sign-off, for the verifiers of the tree's county and whoever gave it")
	SignOffs.SignOff get(@PathVariable UUID id, Actor actor) {
		return this.giveSignOff.read(actor, id);
	}

	@PostMapping("/api/v1/sign-offs/{id}/assent")
	@DryRun
	@Access(Who.COORDINATOR)
	@Operation(operationId = "assentToTitle",
			summary = "Say yes to a sign-off that waits because it would change who holds a title")
	SignOffs.SignOff assent(@PathVariable UUID id, @RequestBody @Valid AssentBody body, IfMatch ifMatch, Actor actor) {
		this.assentToTitle.assent(actor, id, body.reason(),
				(revision) -> ifMatch.require(revision, () -> this.signOffs.get(id)));
		return this.signOffs.get(id);
	}

	@PostMapping("/api/v1/sign-offs/{id}/revocation")
	@DryRun
	@Access(Who.COORDINATOR)
	@Operation(operationId = "revokeSignOff", summary = "Revoke a sign-off")
	SignOffs.SignOff revoke(@PathVariable UUID id, @RequestBody @Valid ReasonBody body, IfMatch ifMatch, Actor actor) {
		this.takeBack.revoke(actor, id, body.reason(),
				(revision) -> ifMatch.require(revision, () -> this.signOffs.get(id)));
		return this.signOffs.get(id);
	}

	@PostMapping("/api/v1/measurements/{id}/setting-aside")
	@DryRun
	@Access(Who.COORDINATOR)
	@Operation(operationId = "setMeasurementAside", summary = "Set a measurement aside")
	MeasurementJson setAside(@PathVariable UUID id, @RequestBody @Valid ReasonBody body, IfMatch ifMatch, Actor actor) {
		this.takeBack.setAside(actor, id, body.reason(), (revision) -> ifMatch.require(revision, () -> json(id)));
		return json(id);
	}

	private MeasurementJson json(UUID id) {
		ReadMeasurements.Measurement measurement = this.measurements.get(id);
		return this.measurements.json(measurement);
	}

	/**
	 * A coordinator's yes.
	 */
	record AssentBody(@Nullable @Size(max = 2000) String reason) {
	}

	/**
	 * Why.
	 */
	record ReasonBody(@NotBlank @Size(max = 2000) String reason) {
	}

}

package county.bigtree.registry.owner.web;

import java.net.URI;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.owner.ConsentBody;
import county.bigtree.registry.owner.Owner;
import county.bigtree.registry.owner.OwnerBody;
import county.bigtree.registry.owner.Owners;
import county.bigtree.registry.people.Actor;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;

import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/**
 * Owners of trees and their consents.
 */
@RestController
@Tag(name = "Owners", description = "Who owns a tree and what they consent to, for coordinators.")
class OwnerController {

	private final Owners owners;

	OwnerController(Owners owners) {
		this.owners = owners;
	}

	@GetMapping("/api/v1/trees/{tree}/owners")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "listOwners",
			summary = "The owners of a tree with what they consent to; that they were read is noted")
	Page<Owner> list(@PathVariable String tree, Actor actor) {
		return Page.whole(this.owners.of(actor, tree));
	}

	@PostMapping("/api/v1/trees/{tree}/owners")
	@ResponseStatus(HttpStatus.CREATED)
	@Access(Who.COORDINATOR)
	@Operation(operationId = "addOwner", summary = "Record an owner of a tree, who has consented to nothing yet")
	ResponseEntity<Owner> add(@PathVariable String tree, @RequestBody @Valid OwnerBody body, Actor actor) {
		UUID id = this.owners.add(actor, tree, body);
		return ResponseEntity.created(URI.create("/api/v1/owners/" + id)).body(this.owners.get(actor, id));
	}

	@GetMapping("/api/v1/owners/{id}")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "getOwner", summary = "An owner with what they consent to; that it was read is noted")
	Owner get(@PathVariable UUID id, Actor actor) {
		return this.owners.get(actor, id);
	}

	@PostMapping("/api/v1/owners/{id}/consents")
	@ResponseStatus(HttpStatus.CREATED)
	@Access(Who.COORDINATOR)
	@Operation(operationId = "recordConsent",
			summary = "Record what an owner says to visits, to the tree's being listed, to its exact place and photos being published")
	ResponseEntity<Owner> consent(@PathVariable UUID id, @RequestBody @Valid ConsentBody body, Actor actor) {
		this.owners.say(actor, id, body);
		return ResponseEntity.created(URI.create("/api/v1/owners/" + id)).body(this.owners.get(actor, id));
	}

	@PostMapping("/api/v1/owners/{id}/end")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "endOwner", summary = "Record that somebody owns a tree no more")
	Owner end(@PathVariable UUID id, @RequestBody @Valid OwnerEndBody body, Actor actor) {
		this.owners.end(actor, id, body.reason());
		return this.owners.get(actor, id);
	}

	/**
	 * Why they own it no more.
	 */
	record OwnerEndBody(@NotBlank @Size(max = 2000) String reason) {
	}

}

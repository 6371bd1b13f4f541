package county.bigtree.registry.people.web;

import java.net.URI;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.CountyRole;
import county.bigtree.registry.people.EndRole;
import county.bigtree.registry.people.GiveRole;
import county.bigtree.registry.people.HeldRole;
import county.bigtree.registry.people.ListRoles;
import county.bigtree.registry.people.Role;
import county.bigtree.registry.problem.Problem;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/**
 * Roles of people: given for a time or for good, ended, and told as they were.
 */
@RestController
@RequestMapping("/api/v1/people/{person}/roles")
@Tag(name = "People", description = "Accounts, roles, invitations and access tokens.")
class RolesController {

	private final GiveRole giveRole;

	private final EndRole endRole;

	private final ListRoles listRoles;

	RolesController(GiveRole giveRole, EndRole endRole, ListRoles listRoles) {
		this.giveRole = giveRole;
		this.endRole = endRole;
		this.listRoles = listRoles;
	}

	@GetMapping
	@Access(Who.SIGNED_IN)
	@Operation(operationId = "listRoles",
			summary = "The roles that someone holds, held or will hold, as far as they are yours to see")
	Page<HeldRoleJson> list(@PathVariable UUID person, Actor actor) {
		return Page.whole(this.listRoles.of(actor, person).stream().map(HeldRoleJson::from).toList());
	}

	@PostMapping
	@Access(Who.COORDINATOR_OR_ADMINISTRATOR)
	@ResponseStatus(HttpStatus.CREATED)
	@Operation(operationId = "giveRole", summary = "Give someone a role, from a day and until a day if wanted")
	ResponseEntity<HeldRoleJson> give(@PathVariable UUID person, @Valid @RequestBody RoleBody body, Actor actor) {
		HeldRole held = this.giveRole.give(actor, person, body.countyRole(), body.from(), body.until());
		return ResponseEntity.created(URI.create("/api/v1/people/" + person + "/roles")).body(HeldRoleJson.from(held));
	}

	@DeleteMapping("/{role}")
	@Access(Who.COORDINATOR_OR_ADMINISTRATOR)
	@ResponseStatus(HttpStatus.NO_CONTENT)
	@Operation(operationId = "endRole",
			summary = "End a role at once; it stays on record, and open work goes back to the coordinators")
	void end(@PathVariable UUID person, @PathVariable UUID role, Actor actor) {
		this.endRole.end(actor, person, role);
	}

	/**
	 * A role to be given.
	 *
	 * @param county null for the administrator, and only there
	 * @param from the first day, in the county's time zone; at once where none is given
	 * @param until the last day; no end where none is given
	 */
	record RoleBody(@Nullable String county, @NotNull Role role, @Nullable LocalDate from, @Nullable LocalDate until) {

		CountyRole countyRole() {
			if ((this.county == null) != (this.role == Role.ADMINISTRATOR)) {
				throw Problem.invalid("#/county", "contradiction",
						"must be given for every role but administrator, and not for that");
			}
			return new CountyRole(this.county, this.role);
		}

	}

	/**
	 * A role as it is, was or will be held.
	 *
	 * @param id of this holding
	 * @param until when it ended or will end; null while nobody said so
	 */
	record HeldRoleJson(UUID id, @Nullable String county, Role role, Instant from, @Nullable Instant until) {

		static HeldRoleJson from(HeldRole held) {
			return new HeldRoleJson(held.id(), held.county(), held.role(), held.from(), held.until());
		}

	}

}

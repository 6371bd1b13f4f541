package county.bigtree.registry.people.web;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.ClientNetwork;
import county.bigtree.registry.http.Unkeyed;
import county.bigtree.registry.people.AcceptInvitation;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.CountyRole;
import county.bigtree.registry.people.InvitePerson;
import county.bigtree.registry.people.Role;
import county.bigtree.registry.problem.Problem;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.validation.Valid;
import jakarta.validation.constraints.Email;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/**
 * Invitations, made by those who run a county and accepted by the one invited.
 */
@RestController
@RequestMapping("/api/v1/invitations")
@Tag(name = "People", description = "Accounts, roles, invitations and access tokens.")
class InvitationController {

	private final InvitePerson invitePerson;

	private final AcceptInvitation acceptInvitation;

	InvitationController(InvitePerson invitePerson, AcceptInvitation acceptInvitation) {
		this.invitePerson = invitePerson;
		this.acceptInvitation = acceptInvitation;
	}

	@PostMapping
	@Access(Who.COORDINATOR_OR_ADMINISTRATOR)
	@Unkeyed
	@ResponseStatus(HttpStatus.CREATED)
	@Operation(operationId = "invite",
			summary = "Invite someone with roles; the answer holds a one-time token for them")
	MadeInvitation invite(@Valid @RequestBody InvitationRequest request, Actor actor) {
		return MadeInvitation
			.from(this.invitePerson.invite(actor, request.email(), request.creditName(), request.countyRoles()));
	}

	@PostMapping("/acceptance")
	@Access(Who.ANYONE)
	@Unkeyed
	@ResponseStatus(HttpStatus.CREATED)
	@Operation(operationId = "acceptInvitation", summary = "Open an account with the one-time token of an invitation")
	Accepted accept(@Valid @RequestBody AcceptanceRequest request, HttpServletRequest http) {
		return new Accepted(this.acceptInvitation.accept(request.token(), request.password(), request.creditName(),
				ClientNetwork.of(http)));
	}

	/**
	 * Whom to invite.
	 *
	 * @param creditName proposed; the one invited may choose another
	 * @param roles one or more
	 */
	record InvitationRequest(@NotBlank @Email @Size(max = 254) String email,
			@Nullable @Size(min = 1, max = 100) @Pattern(regexp = "\\S(.*\\S)?") String creditName,
			@NotEmpty @Size(max = 50) List<@Valid RoleJson> roles) {

		List<CountyRole> countyRoles() {
			List<CountyRole> found = new ArrayList<>();
			for (int i = 0; i < this.roles.size(); i++) {
				RoleJson one = this.roles.get(i);
				if ((one.county() == null) != (one.role() == Role.ADMINISTRATOR)) {
					throw Problem.invalid("#/roles/" + i + "/county", "contradiction",
							"must be given for every role but administrator, and not for that");
				}
				found.add(new CountyRole(one.county(), one.role()));
			}
			return found;
		}

	}

	/**
	 * An invitation just made.
	 *
	 * @param token for the one invited; it is not shown again
	 */
	record MadeInvitation(UUID id, String email, @Nullable String creditName, List<RoleJson> roles, Instant expiresAt,
			String token) {

		static MadeInvitation from(InvitePerson.Invited invited) {
			return new MadeInvitation(invited.id(), invited.email(), invited.creditName(),
					invited.roles().stream().map(RoleJson::from).toList(), invited.expiresAt(), invited.secret());
		}

	}

	/**
	 * What the one invited sends.
	 *
	 * @param password of the account that it opens, or of the one that the address has
	 * @param creditName the name to be shown; needed unless the invitation proposes one
	 */
	record AcceptanceRequest(@NotBlank @Size(max = 200) String token, @NotBlank String password,
			@Nullable @Size(min = 1, max = 100) @Pattern(regexp = "\\S(.*\\S)?") String creditName) {

	}

	/** The person who now has an account. */
	record Accepted(UUID person) {

	}

}

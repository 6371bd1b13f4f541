package county.bigtree.registry.people.web;

import java.time.Instant;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.ClientNetwork;
import county.bigtree.registry.http.Unkeyed;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.ChangeEmail;
import county.bigtree.registry.people.ChangePassword;
import county.bigtree.registry.people.ManagedPeople;
import county.bigtree.registry.people.ResetPassword;
import county.bigtree.registry.session.PersonSession;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.validation.Valid;
import jakarta.validation.constraints.Email;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;

import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/**
 * Passwords, changed by who knows them and chosen anew by who forgot them, and the
 * address that goes with them.
 */
@RestController
@RequestMapping("/api/v1/people")
@Tag(name = "People", description = "Accounts, roles, invitations and access tokens.")
class PasswordController {

	private final ChangePassword changePassword;

	private final ResetPassword resetPassword;

	private final ManagedPeople managed;

	private final ChangeEmail changeEmail;

	PasswordController(ChangePassword changePassword, ResetPassword resetPassword, ManagedPeople managed,
			ChangeEmail changeEmail) {
		this.changeEmail = changeEmail;
		this.changePassword = changePassword;
		this.resetPassword = resetPassword;
		this.managed = managed;
	}

	@PutMapping("/me/password")
	@Access(value = Who.SIGNED_IN, account = true)
	@ResponseStatus(HttpStatus.NO_CONTENT)
	@Operation(operationId = "changePassword", summary = "Change your password, which ends your other sessions")
	void change(@Valid @RequestBody PasswordChange request, Actor actor, HttpServletRequest http) {
		this.changePassword.change(actor, request.presentPassword(), request.newPassword(), ClientNetwork.of(http),
				PersonSession.id(http).orElse(null));
	}

	@PutMapping("/me/email")
	@Access(value = Who.SIGNED_IN, account = true)
	@ResponseStatus(HttpStatus.NO_CONTENT)
	@Operation(operationId = "changeEmail",
			summary = "Change the e-mail address that you sign in with, which ends your other sessions")
	void changeEmail(@Valid @RequestBody EmailChange request, Actor actor, HttpServletRequest http) {
		this.changeEmail.change(actor, request.email(), request.presentPassword(), ClientNetwork.of(http),
				PersonSession.id(http).orElse(null));
	}

	@PostMapping("/{person}/password-reset")
	@Access(Who.COORDINATOR_OR_ADMINISTRATOR)
	@Unkeyed
	@ResponseStatus(HttpStatus.CREATED)
	@Operation(operationId = "makePasswordReset",
			summary = "Let someone who forgot the password choose another, by a one-time token handed to them")
	MadeReset make(@PathVariable UUID person, Actor actor, HttpServletRequest http) {
		UUID managed = this.managed.require(actor, person);
		ResetPassword.Made made = this.resetPassword.make(managed, actor.id(), ClientNetwork.of(http));
		return new MadeReset(managed, made.secret(), made.expiresAt());
	}

	@PostMapping("/password-reset")
	@Access(Who.ANYONE)
	@Unkeyed
	@ResponseStatus(HttpStatus.NO_CONTENT)
	@Operation(operationId = "resetPassword",
			summary = "Choose another password with a one-time token, which ends all sessions and access tokens")
	void reset(@Valid @RequestBody PasswordReset request, HttpServletRequest http) {
		this.resetPassword.reset(request.token(), request.newPassword(), ClientNetwork.of(http));
	}

	/**
	 * The present password and the one wanted.
	 */
	record PasswordChange(@NotBlank @Size(max = 1000) String presentPassword, @NotBlank String newPassword) {
	}

	/**
	 * The address wanted, and the present password.
	 */
	record EmailChange(@NotBlank @Size(max = 254) @Email String email,
			@NotBlank @Size(max = 1000) String presentPassword) {
	}

	/**
	 * A one-time token just made.
	 *
	 * @param token for the person; it is not shown again
	 */
	record MadeReset(UUID person, String token, Instant expiresAt) {
	}

	/**
	 * What the person sends.
	 */
	record PasswordReset(@NotBlank @Size(max = 200) String token, @NotBlank String newPassword) {
	}

}

package county.bigtree.registry.people.web;

import java.net.URI;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.http.Unkeyed;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.ListTokens;
import county.bigtree.registry.people.MakeToken;
import county.bigtree.registry.people.RevokeToken;
import county.bigtree.registry.people.RevokeTokens;
import county.bigtree.registry.people.TokenScope;
import county.bigtree.registry.people.TokenSummary;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.security.SecurityRequirement;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
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
 * Personal access tokens: made with the password, then sent with every request.
 */
@RestController
@RequestMapping("/api/v1/tokens")
@Tag(name = "People", description = "Accounts, roles, invitations and access tokens.")
class TokenController {

	private final MakeToken makeToken;

	private final ListTokens listTokens;

	private final RevokeToken revokeToken;

	private final RevokeTokens revokeTokens;

	TokenController(MakeToken makeToken, ListTokens listTokens, RevokeToken revokeToken, RevokeTokens revokeTokens) {
		this.makeToken = makeToken;
		this.listTokens = listTokens;
		this.revokeToken = revokeToken;
		this.revokeTokens = revokeTokens;
	}

	@PostMapping
	@ResponseStatus(HttpStatus.CREATED)
	@Access(value = Who.SIGNED_IN, account = true)
	@Unkeyed
	@SecurityRequirement(name = "password")
	@Operation(operationId = "makeToken", summary = "Make a personal access token, with e-mail address and password")
	ResponseEntity<MadeToken> make(@Valid @RequestBody TokenRequest request, Actor actor) {
		MakeToken.Made made = this.makeToken.make(actor, request.name(), request.expiresOn(),
				(request.scope() != null) ? request.scope() : TokenScope.ALL);
		MadeToken answer = MadeToken.from(made);
		return ResponseEntity.created(URI.create("/api/v1/tokens/" + answer.id())).body(answer);
	}

	@GetMapping
	@Access(value = Who.SIGNED_IN, account = true)
	@Operation(operationId = "listTokens", summary = "Your own tokens that still work")
	Page<TokenSummary> list(Actor actor) {
		return Page.whole(this.listTokens.list(actor));
	}

	@DeleteMapping("/{token}")
	@Access(value = Who.SIGNED_IN, account = true)
	@ResponseStatus(HttpStatus.NO_CONTENT)
	@Operation(operationId = "revokeToken", summary = "Take back one of your own tokens")
	void revoke(@PathVariable UUID token, Actor actor) {
		this.revokeToken.revoke(actor, token);
	}

	@DeleteMapping
	@Access(value = Who.SIGNED_IN, account = true)
	@ResponseStatus(HttpStatus.NO_CONTENT)
	@Operation(operationId = "revokeTokens", summary = "Take back all your own tokens")
	void revokeAll(Actor actor) {
		this.revokeTokens.revokeAll(actor);
	}

	/**
	 * What a token is asked for.
	 *
	 * @param expiresOn the last day on which it shall work; half a year from now where
	 * none is given
	 * @param scope what it shall be good for, at most: read, file as a volunteer, or all;
	 * all where none is given
	 */
	record TokenRequest(@NotBlank @Size(max = 100) String name, @Nullable LocalDate expiresOn,
			@Nullable TokenScope scope) {

	}

	/**
	 * A token just made.
	 *
	 * @param token to be kept by the client; it is not shown again
	 */
	record MadeToken(UUID id, String name, String token, String last4, Instant createdAt, LocalDate expiresOn,
			TokenScope scope) {

		static MadeToken from(MakeToken.Made made) {
			TokenSummary summary = made.summary();
			return new MadeToken(summary.id(), summary.name(), made.secret(), summary.last4(), summary.createdAt(),
					summary.expiresOn(), summary.scope());
		}

	}

}

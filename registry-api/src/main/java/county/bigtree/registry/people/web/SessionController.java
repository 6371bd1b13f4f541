package county.bigtree.registry.people.web;

import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.ClientNetwork;
import county.bigtree.registry.http.Unkeyed;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.CountyRole;
import county.bigtree.registry.people.SignIn;
import county.bigtree.registry.people.SignInEvent;
import county.bigtree.registry.people.SignOut;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.session.PersonSession;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.security.SecurityRequirement;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.security.web.csrf.CsrfToken;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/**
 * Signing in and out with a cookie, and who is asking.
 */
@RestController
@RequestMapping("/api/v1/session")
@Tag(name = "People", description = "Accounts, roles, invitations and access tokens.")
class SessionController {

	private final SignIn signIn;

	private final SignOut signOut;

	private final Clock clock;

	SessionController(SignIn signIn, SignOut signOut, Clock clock) {
		this.signIn = signIn;
		this.signOut = signOut;
		this.clock = clock;
	}

	@GetMapping
	@Access(Who.SIGNED_IN)
	@Operation(operationId = "getSession", summary = "Who you are and which roles you hold")
	Session session(Actor actor, HttpServletRequest http) {
		boolean byCookie = http.getHeader(HttpHeaders.AUTHORIZATION) == null;
		return Session.from(actor, byCookie ? csrfToken(http) : null);
	}

	@PostMapping
	@Access(Who.ANYONE)
	@Unkeyed
	@SecurityRequirement(name = "password")
	@Operation(operationId = "signIn", summary = "Sign in: the answer sets a cookie that stands for you")
	Session signIn(@Valid @RequestBody SignInRequest request, HttpServletRequest http) {
		Actor actor = this.signIn
			.signIn(request.email(), request.password(), ClientNetwork.of(http), SignInEvent.SIGNED_IN)
			.orElseThrow(() -> Problem.of(ProblemType.SIGN_IN_FAILED, "The e-mail address and password do not fit.")
				.withHeader(HttpHeaders.WWW_AUTHENTICATE, "Bearer realm=\"registry\""));
		PersonSession.begin(http, actor.id(), this.clock.instant());
		return Session.from(actor, csrfToken(http));
	}

	@DeleteMapping
	@Access(value = Who.SIGNED_IN, account = true)
	@ResponseStatus(HttpStatus.NO_CONTENT)
	@Operation(operationId = "signOut", summary = "Sign out: here, or wherever you are signed in with a cookie")
	void signOut(@RequestParam(defaultValue = "false") boolean everywhere, Actor actor, HttpServletRequest http) {
		PersonSession.end(http);
		this.signOut.signOut(actor, everywhere, ClientNetwork.of(http));
	}

	private static @Nullable String csrfToken(HttpServletRequest http) {
		return (http.getAttribute(CsrfToken.class.getName()) instanceof CsrfToken token) ? token.getToken() : null;
	}

	/**
	 * Who wants in.
	 */
	record SignInRequest(@NotBlank @Size(max = 254) String email, @NotBlank @Size(max = 1000) String password) {
	}

	/**
	 * The one who asks.
	 *
	 * @param person their id
	 * @param roles the highest in each county
	 * @param csrfToken to be sent in the header X-CSRF-TOKEN with everything that is not
	 * only read; null where a token of your own is used, which needs none
	 */
	record Session(UUID person, String creditName, boolean administrator, List<RoleJson> roles,
			@Nullable String csrfToken) {

		static Session from(Actor actor, @Nullable String csrfToken) {
			return new Session(actor.id(), actor.creditName(), actor.administrator(),
					actor.roles()
						.entrySet()
						.stream()
						.sorted(Map.Entry.comparingByKey())
						.map((held) -> RoleJson.from(CountyRole.of(held.getKey(), held.getValue())))
						.toList(),
					csrfToken);
		}

	}

}

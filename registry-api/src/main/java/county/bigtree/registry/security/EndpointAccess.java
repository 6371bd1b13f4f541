package county.bigtree.registry.security;

import java.util.Map;
import java.util.Optional;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.Role;
import county.bigtree.registry.people.TokenScope;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.HandlerMapping;

/**
 * Lets a call through to an endpoint if its {@link Access} says so. One that declares
 * nothing is closed to everyone, but for the library that describes the API.
 */
class EndpointAccess implements HandlerInterceptor {

	private static final String DESCRIPTION_OF_THE_API = "org.springdoc.";

	@Override
	public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
		if (handler instanceof HandlerMethod method
				&& !method.getBeanType().getName().startsWith(DESCRIPTION_OF_THE_API)) {
			Access access = method.getMethodAnnotation(Access.class);
			if (access == null) {
				throw notAllowed();
			}
			judge(access.value(), county(request));
			judgeScope(access, request);
		}
		return true;
	}

	static Optional<Actor> actor() {
		Authentication known = SecurityContextHolder.getContext().getAuthentication();
		return (known instanceof ActorAuthentication authentication) ? Optional.of(authentication.getPrincipal())
				: Optional.empty();
	}

	static Problem signInNeeded() {
		return Problem.of(ProblemType.SIGN_IN_NEEDED, "A valid access token is needed.")
			.withHeader(HttpHeaders.WWW_AUTHENTICATE, "Bearer realm=\"registry\"");
	}

	private static void judge(Who who, @Nullable String county) {
		if (who == Who.ANYONE) {
			return;
		}
		Actor actor = actor().orElseThrow(EndpointAccess::signInNeeded);
		boolean allowed = switch (who) {
			case ANYONE, SIGNED_IN, VERIFIER_OR_GUEST -> true;
			case VOLUNTEER -> holds(actor, Role.VOLUNTEER, county);
			case VERIFIER -> holds(actor, Role.VERIFIER, county);
			case COORDINATOR -> holds(actor, Role.COORDINATOR, county);
			case COORDINATOR_OR_ADMINISTRATOR -> actor.administrator() || holds(actor, Role.COORDINATOR, county);
			case ADMINISTRATOR -> actor.administrator();
		};
		if (!allowed) {
			throw notAllowed();
		}
	}

	/** What anyone may do, a token of any scope may do too. */
	private static void judgeScope(Access access, HttpServletRequest request) {
		if (access.value() == Who.ANYONE || !(SecurityContextHolder.getContext()
			.getAuthentication() instanceof ActorAuthentication authentication)) {
			return;
		}
		TokenScope scope = authentication.scope();
		boolean reads = HttpMethod.GET.matches(request.getMethod()) || HttpMethod.HEAD.matches(request.getMethod());
		if (scope == TokenScope.READ && !reads || scope != TokenScope.ALL && access.account()) {
			throw Problem.of(ProblemType.NOT_ALLOWED,
					"The scope of this token, " + scope.code() + ", does not include this.");
		}
	}

	private static boolean holds(Actor actor, Role role, @Nullable String county) {
		return (county != null) ? actor.is(role, county) : actor.isAnywhere(role);
	}

	private static @Nullable String county(HttpServletRequest request) {
		return (request.getAttribute(HandlerMapping.URI_TEMPLATE_VARIABLES_ATTRIBUTE) instanceof Map<?, ?> variables
				&& variables.get("county") instanceof String county) ? county : null;
	}

	private static Problem notAllowed() {
		return Problem.of(ProblemType.NOT_ALLOWED, "Your roles do not include this.");
	}

}

package county.bigtree.registry.security;

import java.time.Clock;

import county.bigtree.registry.people.Actors;
import county.bigtree.registry.session.PersonSession;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpHeaders;
import org.springframework.security.core.context.DeferredSecurityContext;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.context.HttpRequestResponseHolder;
import org.springframework.security.web.context.SecurityContextRepository;
import org.springframework.stereotype.Component;

/**
 * Finds the person of a session, with the roles held now, when somebody wants to know.
 * Stores nothing: a session is begun by signing in alone.
 */
@Component
class SessionContexts implements SecurityContextRepository {

	private final Actors actors;

	private final Clock clock;

	SessionContexts(Actors actors, Clock clock) {
		this.actors = actors;
		this.clock = clock;
	}

	@Override
	public DeferredSecurityContext loadDeferredContext(HttpServletRequest request) {
		return new Deferred(request);
	}

	@Override
	@SuppressWarnings("deprecation")
	public SecurityContext loadContext(HttpRequestResponseHolder holder) {
		return load(holder.getRequest());
	}

	@Override
	public void saveContext(SecurityContext context, HttpServletRequest request, HttpServletResponse response) {
		// The session holds the person alone.
	}

	@Override
	public boolean containsContext(HttpServletRequest request) {
		return PersonSession.person(request, this.clock.instant()).isPresent();
	}

	/** Whether the cookie alone says who asks. */
	boolean judges(HttpServletRequest request) {
		return request.getHeader(HttpHeaders.AUTHORIZATION) == null && containsContext(request);
	}

	private SecurityContext load(HttpServletRequest request) {
		SecurityContext context = SecurityContextHolder.createEmptyContext();
		if (request.getHeader(HttpHeaders.AUTHORIZATION) == null) {
			PersonSession.person(request, this.clock.instant())
				.flatMap(this.actors::find)
				.ifPresent((actor) -> context.setAuthentication(new ActorAuthentication(actor)));
		}
		return context;
	}

	/** Loaded once, when first asked for. */
	private final class Deferred implements DeferredSecurityContext {

		private final HttpServletRequest request;

		private @Nullable SecurityContext context;

		Deferred(HttpServletRequest request) {
			this.request = request;
		}

		@Override
		public SecurityContext get() {
			if (this.context == null) {
				this.context = load(this.request);
			}
			return this.context;
		}

		@Override
		public boolean isGenerated() {
			return !containsContext(this.request);
		}

	}

}

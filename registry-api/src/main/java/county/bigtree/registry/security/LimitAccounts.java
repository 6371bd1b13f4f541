package county.bigtree.registry.security;

import java.time.Duration;
import java.util.Optional;

import county.bigtree.registry.http.OwnAddresses;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.springframework.web.servlet.HandlerInterceptor;

/**
 * Holds back accounts that ask for more than their share, from wherever they ask. What a
 * page asks of the API is part of the page.
 */
class LimitAccounts implements HandlerInterceptor {

	private final Allowance allowance;

	LimitAccounts(RequestLimits limits) {
		this.allowance = new Allowance(limits.accountPerSecond(), limits.accountBurst());
	}

	@Override
	public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
		if (OwnAddresses.isAsking(request)) {
			return true;
		}
		Optional<Duration> pause = EndpointAccess.actor().flatMap((actor) -> this.allowance.ask(actor.id().toString()));
		if (pause.isPresent()) {
			throw LimitNetworks.tooMany(pause.get());
		}
		return true;
	}

}

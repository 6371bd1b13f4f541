package county.bigtree.registry.security;

import java.time.Duration;
import java.util.Optional;

import county.bigtree.registry.http.ClientNetwork;
import jakarta.servlet.http.HttpServletRequest;

import org.springframework.stereotype.Component;

/**
 * What each network may still ask of this node.
 */
@Component
public class NetworkAllowance {

	private final Allowance allowance;

	NetworkAllowance(RequestLimits limits) {
		this.allowance = new Allowance(limits.networkPerSecond(), limits.networkBurst());
	}

	/** Counts a request, and answers how long to wait; nothing where it may go on. */
	public Optional<Duration> ask(HttpServletRequest request) {
		return this.allowance.ask(ClientNetwork.of(request));
	}

}

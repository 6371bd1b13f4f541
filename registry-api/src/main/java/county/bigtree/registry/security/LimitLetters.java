package county.bigtree.registry.security;

import java.time.Duration;
import java.util.Map;
import java.util.function.Supplier;

import county.bigtree.registry.http.ClientNetwork;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.springframework.http.HttpMethod;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.HandlerMapping;

/**
 * Lets one network write no more than so many letters an hour to one county: anybody may
 * write, and somebody has to read them all. They are counted over all nodes.
 */
class LimitLetters implements HandlerInterceptor {

	/** Where letters are written to; the page calls this, too. */
	static final String ADDRESS = "/api/v1/counties/{county}/letters";

	private final SharedAllowance allowance;

	LimitLetters(RequestLimits limits, Supplier<JdbcClient> jdbc) {
		this.allowance = new SharedAllowance(limits.lettersPerHour(), Duration.ofHours(1), jdbc);
	}

	@Override
	public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
		if (HttpMethod.POST.matches(request.getMethod())) {
			this.allowance.ask(ClientNetwork.of(request) + " " + county(request)).ifPresent((pause) -> {
				throw Problem.of(ProblemType.TOO_MANY_REQUESTS,
						"That is more letters than one may write to a county in an hour. Wait as long as Retry-After says.")
					.retryAfter(pause);
			});
		}
		return true;
	}

	private static String county(HttpServletRequest request) {
		return (request.getAttribute(HandlerMapping.URI_TEMPLATE_VARIABLES_ATTRIBUTE) instanceof Map<?, ?> variables)
				? String.valueOf(variables.get("county")) : "";
	}

}

package county.bigtree.registry.readcache;

import java.util.Collections;
import java.util.Enumeration;
import java.util.List;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpHeaders;

/**
 * A request without its condition, so that there is an answer to keep: whether the asker
 * has it already is looked at afterwards.
 */
final class Unconditional extends HttpServletRequestWrapper {

	Unconditional(HttpServletRequest request) {
		super(request);
	}

	@Override
	public @Nullable String getHeader(String name) {
		return isCondition(name) ? null : super.getHeader(name);
	}

	@Override
	public Enumeration<String> getHeaders(String name) {
		return isCondition(name) ? Collections.emptyEnumeration() : super.getHeaders(name);
	}

	@Override
	public Enumeration<String> getHeaderNames() {
		List<String> names = Collections.list(super.getHeaderNames());
		names.removeIf(Unconditional::isCondition);
		return Collections.enumeration(names);
	}

	private static boolean isCondition(String name) {
		return HttpHeaders.IF_NONE_MATCH.equalsIgnoreCase(name);
	}

}

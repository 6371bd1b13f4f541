package county.bigtree.registry.problem;

import jakarta.servlet.ServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;

/**
 * The name of a request, by which whoever runs the service finds it in the log.
 */
public final class RequestName {

	private static final String HEADER = "Request-Id";

	private static final String ATTRIBUTE = RequestName.class.getName();

	private RequestName() {
	}

	public static void give(ServletRequest request, String name) {
		request.setAttribute(ATTRIBUTE, name);
	}

	/** Writes it into the answer's header, once more where that was cleared. */
	public static void tell(ServletRequest request, HttpServletResponse response) {
		String name = of(request);
		if (name != null) {
			response.setHeader(HEADER, name);
		}
	}

	/** Null for what no filter saw. */
	public static @Nullable String of(ServletRequest request) {
		return (request.getAttribute(ATTRIBUTE) instanceof String name) ? name : null;
	}

}

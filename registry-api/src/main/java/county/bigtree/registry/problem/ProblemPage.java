package county.bigtree.registry.problem;

import java.util.List;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.springframework.http.HttpHeaders;

/**
 * A problem as a page, for people who asked for one.
 */
public interface ProblemPage {

	/** Beginnings of the addresses that programs ask. */
	List<String> FOR_PROGRAMS = List.of("/api/", "/exports/", "/ogc", "/openapi.json", "/healthz", "/readyz",
			"/metrics", "/webjars/", "/script/", "/style/");

	/** The page, in UTF-8. */
	byte[] page(Problem problem, HttpServletRequest request, HttpServletResponse response);

	/**
	 * Whether the path is a page's and the request comes from a browser that shows one.
	 */
	static boolean isWanted(String path, HttpServletRequest request) {
		String accept = request.getHeader(HttpHeaders.ACCEPT);
		return accept != null && accept.contains("text/html") && FOR_PROGRAMS.stream().noneMatch(path::startsWith);
	}

}

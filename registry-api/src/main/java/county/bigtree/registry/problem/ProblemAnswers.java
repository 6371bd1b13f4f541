package county.bigtree.registry.problem;

import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Component;

/**
 * Puts a problem into its one form, {@code application/problem+json}: as an answer of a
 * controller, or written straight to the response where no controller was reached. Who
 * asked for a page gets it as a page.
 */
@Component
public class ProblemAnswers {

	private static final MediaType PAGE = new MediaType(MediaType.TEXT_HTML, StandardCharsets.UTF_8);

	private final JsonMapper json;

	private final ObjectProvider<ProblemPage> pages;

	ProblemAnswers(JsonMapper json, ObjectProvider<ProblemPage> pages) {
		this.json = json;
		this.pages = pages;
	}

	public ResponseEntity<Object> answer(Problem problem, HttpServletRequest request,
			@Nullable HttpServletResponse response) {
		return answer(problem, request.getRequestURI(), request, response);
	}

	/**
	 * As above, for what was asked at another path than that of the request at hand.
	 */
	public ResponseEntity<Object> answer(Problem problem, String path, HttpServletRequest request,
			@Nullable HttpServletResponse response) {
		byte[] page = page(problem, path, request, response);
		return ResponseEntity.status(problem.type().status())
			.headers(problem.headers())
			.header(HttpHeaders.CACHE_CONTROL, "private, no-store")
			.contentType((page != null) ? PAGE : MediaType.APPLICATION_PROBLEM_JSON)
			.body((page != null) ? page : body(problem, path, request));
	}

	private byte @Nullable [] page(Problem problem, String path, HttpServletRequest request,
			@Nullable HttpServletResponse response) {
		return (response != null && ProblemPage.isWanted(path, request))
				? this.pages.getObject().page(problem, request, response) : null;
	}

	public void write(Problem problem, HttpServletRequest request, HttpServletResponse response) throws IOException {
		byte[] page = page(problem, request.getRequestURI(), request, response);
		byte[] bytes = (page != null) ? page
				: this.json.writeValueAsBytes(body(problem, request.getRequestURI(), request));
		response.setStatus(problem.type().status().value());
		problem.headers().forEach((name, values) -> values.forEach((value) -> response.addHeader(name, value)));
		response.setHeader(HttpHeaders.CACHE_CONTROL, "private, no-store");
		response.setContentType((page != null) ? PAGE.toString() : MediaType.APPLICATION_PROBLEM_JSON_VALUE);
		response.setContentLength(bytes.length);
		response.getOutputStream().write(bytes);
	}

	private static ProblemDetail body(Problem problem, String path, HttpServletRequest request) {
		ProblemDetail body = ProblemDetail.forStatusAndDetail(problem.type().status(), problem.detail());
		body.setType(problem.type().uri());
		body.setTitle(problem.type().title());
		URI instance = instance(path);
		if (instance != null) {
			body.setInstance(instance);
		}
		if (!problem.errors().isEmpty()) {
			body.setProperty("errors", problem.errors());
		}
		problem.members().forEach(body::setProperty);
		String name = RequestName.of(request);
		if (name != null) {
			body.setProperty("request", name);
		}
		return body;
	}

	private static @Nullable URI instance(String path) {
		try {
			return URI.create(path);
		}
		catch (IllegalArgumentException ex) {
			return null;
		}
	}

}

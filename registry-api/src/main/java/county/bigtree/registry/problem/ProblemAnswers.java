package county.bigtree.registry.problem;

import java.io.IOException;
import java.net.URI;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Component;

/**
 * Puts a problem into its one form, {@code application/problem+json}: as an answer of a
 * controller, or written straight to the response where no controller was reached.
 */
@Component
public class ProblemAnswers {

	private final JsonMapper json;

	ProblemAnswers(JsonMapper json) {
		this.json = json;
	}

	public ResponseEntity<Object> answer(Problem problem, String path) {
		return ResponseEntity.status(problem.type().status())
			.headers(problem.headers())
			.header(HttpHeaders.CACHE_CONTROL, "private, no-store")
			.contentType(MediaType.APPLICATION_PROBLEM_JSON)
			.body(body(problem, path));
	}

	public void write(Problem problem, HttpServletRequest request, HttpServletResponse response) throws IOException {
		byte[] bytes = this.json.writeValueAsBytes(body(problem, request.getRequestURI()));
		response.setStatus(problem.type().status().value());
		problem.headers().forEach((name, values) -> values.forEach((value) -> response.addHeader(name, value)));
		response.setHeader(HttpHeaders.CACHE_CONTROL, "private, no-store");
		response.setContentType(MediaType.APPLICATION_PROBLEM_JSON_VALUE);
		response.setContentLength(bytes.length);
		response.getOutputStream().write(bytes);
	}

	private static ProblemDetail body(Problem problem, String path) {
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

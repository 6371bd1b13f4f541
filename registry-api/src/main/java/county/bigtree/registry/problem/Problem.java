package county.bigtree.registry.problem;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.springframework.http.HttpHeaders;

/**
 * Thrown where a request can't be done, and answered as it is: type, a sentence, the
 * entries at fault, and further members. Carries no stack trace, because it is an answer
 * and not a fault of the program.
 */
public final class Problem extends RuntimeException {

	private final ProblemType type;

	private final String detail;

	private final List<FieldProblem> errors;

	private final Map<String, Object> members;

	private final HttpHeaders headers;

	private Problem(ProblemType type, String detail, List<FieldProblem> errors, Map<String, Object> members,
			HttpHeaders headers) {
		super(type.slug() + ": " + detail, null, false, false);
		this.type = type;
		this.detail = detail;
		this.errors = List.copyOf(errors);
		this.members = members;
		this.headers = headers;
	}

	public static Problem of(ProblemType type, String detail) {
		return new Problem(type, detail, List.of(), Map.of(), new HttpHeaders());
	}

	public static Problem invalid(List<FieldProblem> errors) {
		String detail = (errors.size() == 1) ? "One entry can't be taken." : errors.size() + " entries can't be taken.";
		return new Problem(ProblemType.INVALID, detail, errors, Map.of(), new HttpHeaders());
	}

	public static Problem invalid(String pointer, String code, String detail) {
		return invalid(List.of(new FieldProblem(pointer, code, detail)));
	}

	public static Problem notFound(String detail) {
		return of(ProblemType.NOT_FOUND, detail);
	}

	/** With one more member of the answer, such as {@code checks} or {@code present}. */
	public Problem with(String name, Object value) {
		Map<String, Object> more = new LinkedHashMap<>(this.members);
		more.put(name, value);
		return new Problem(this.type, this.detail, this.errors, more, this.headers);
	}

	public Problem withHeader(String name, String value) {
		HttpHeaders more = new HttpHeaders();
		more.putAll(this.headers);
		more.set(name, value);
		return new Problem(this.type, this.detail, this.errors, this.members, more);
	}

	public Problem retryAfter(Duration wait) {
		return withHeader(HttpHeaders.RETRY_AFTER, Long.toString(Math.max(1, wait.toSeconds())));
	}

	public ProblemType type() {
		return this.type;
	}

	public String detail() {
		return this.detail;
	}

	public List<FieldProblem> errors() {
		return this.errors;
	}

	public Map<String, Object> members() {
		return this.members;
	}

	public HttpHeaders headers() {
		return this.headers;
	}

}

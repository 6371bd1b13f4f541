package county.bigtree.registry.pages.form;

import java.util.ArrayList;
import java.util.List;

import county.bigtree.registry.http.OwnAddresses.Answer;
import county.bigtree.registry.problem.FieldProblem;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

import org.springframework.http.HttpHeaders;

/**
 * Why the API refused, in the terms of its problems.
 *
 * @param detail one sentence
 * @param errors the entries at fault
 * @param body the problem whole, with its further members: checks, the present state
 * @param retryAfter seconds to wait; null where waiting is no help
 */
public record Refusal(ProblemType type, String detail, List<FieldProblem> errors, JsonNode body,
		@Nullable String retryAfter) {

	private static final String SENT_BEFORE = "You sent this form before, and that was done. What you changed since was not."
			+ " Look at what stands now; to change it, send the form once more.";

	static Refusal from(Answer answer, JsonNode body) {
		String slug = body.path("type").asString("").replaceFirst("^.*/", "");
		ProblemType type = ProblemType.find(slug).orElseGet(() -> ProblemType.ofStatus(answer.status()));
		List<FieldProblem> errors = new ArrayList<>();
		body.path("errors")
			.forEach((error) -> errors.add(new FieldProblem(error.path("pointer").asString("#"),
					error.path("code").asString(""), error.path("detail").asString(""))));
		String detail = (type == ProblemType.KEY_REUSED) ? SENT_BEFORE : body.path("detail").asString(type.title());
		return new Refusal(type, detail, errors, body, answer.headers().getFirst(HttpHeaders.RETRY_AFTER));
	}

	/** Whether it asks to look again: filed once more with these codes it is taken. */
	public boolean asks() {
		return this.type == ProblemType.UNANSWERED_CHECKS;
	}

	/** The same, to be thrown. */
	public Problem asProblem() {
		Problem problem = Problem.of(this.type, this.detail);
		return (this.retryAfter != null) ? problem.withHeader(HttpHeaders.RETRY_AFTER, this.retryAfter) : problem;
	}

}

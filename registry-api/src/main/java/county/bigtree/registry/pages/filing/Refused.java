package county.bigtree.registry.pages.filing;

import java.util.List;
import java.util.function.UnaryOperator;

import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.form.Refusal;
import county.bigtree.registry.problem.ProblemType;
import jakarta.servlet.http.HttpServletResponse;
import tools.jackson.databind.JsonNode;

/**
 * Takes a refusal over into the form that was refused.
 */
final class Refused {

	private Refused() {
	}

	/**
	 * Notes why, at the fields at fault.
	 * @param field gives the field of an entry as the API names it
	 */
	static void take(Refusal refusal, Form form, FilingWords words, HttpServletResponse response,
			UnaryOperator<String> field) {
		response.setStatus(refusal.type().status().value());
		for (JsonNode check : refusal.body().path("checks")) {
			if (check.path("severity").asString("").equals("stop")) {
				form.refuse("measuredOn", check.path("detail").asString(""));
			}
		}
		Refusal told = (refusal.type() == ProblemType.KEY_REUSED) ? new Refusal(refusal.type(),
				words.get("filing.sent-already"), List.of(), refusal.body(), refusal.retryAfter()) : refusal;
		form.refuse(told, field);
	}

}

package county.bigtree.registry.pages.office;

import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.form.Refusal;
import county.bigtree.registry.problem.ProblemType;
import jakarta.servlet.http.HttpServletResponse;
import tools.jackson.databind.JsonNode;

/**
 * What a page makes of what the API answers to it.
 */
final class Answers {

	private Answers() {
	}

	/** For a button without fields: a refusal is a page of its own. */
	static JsonNode require(Api.Outcome outcome) {
		Refusal refusal = outcome.refusal();
		if (refusal != null) {
			throw refusal.asProblem();
		}
		return outcome.json();
	}

	/** Who changed a form that was done before may send it once more. */
	static void anew(Refusal refusal, Form form) {
		if (refusal.type() == ProblemType.KEY_REUSED) {
			form.anew();
		}
	}

	/**
	 * Whether it was refused; the form says why then, and the page has the status of the
	 * refusal.
	 */
	static boolean refused(Api.Outcome outcome, Form form, HttpServletResponse response) {
		Refusal refusal = outcome.refusal();
		if (refusal == null) {
			return false;
		}
		form.refuse(refusal);
		anew(refusal, form);
		response.setStatus(refusal.type().status().value());
		return true;
	}

}

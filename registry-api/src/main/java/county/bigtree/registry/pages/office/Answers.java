package county.bigtree.registry.pages.office;

import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.form.Refusal;
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
		response.setStatus(refusal.type().status().value());
		return true;
	}

}

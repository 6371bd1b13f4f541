package county.bigtree.registry.pages.desk;

import java.util.function.Function;

import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.form.Refusal;
import county.bigtree.registry.pages.form.SpeciesField;
import county.bigtree.registry.problem.ProblemType;
import jakarta.servlet.http.HttpServletResponse;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;

/**
 * Shows the form of a decision; tells what it would change, or decides. What was typed
 * stays, whatever comes of it.
 */
@Component
public class Deciding {

	private final SpeciesField species;

	Deciding(SpeciesField species) {
		this.species = species;
	}

	/** Puts the form on the page. */
	void show(Asked asked, Form form, Model model) {
		form.seen(asked.seen());
		model.addAttribute("asked", asked);
	}

	/**
	 * Does what the button says.
	 * @param then where the decision stands, by what was answered
	 * @return the view
	 */
	String decide(Asked asked, String view, Api api, Form form, Model model, HttpServletResponse response,
			Function<JsonNode, String> then) {
		model.addAttribute("asked", asked);
		ObjectNode body = body(asked, form);
		if (asked.decision().onState() && form.seen().isEmpty()) {
			form.seen(asked.seen()).refuse("seen", asked.words().say("decide.unseen"));
		}
		if (form.isWrong()) {
			response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
			return view;
		}
		boolean look = form.has("do", "look");
		Api.Outcome outcome = look ? api.post(asked.action() + "?dryRun=true").on(form.seen()).send(body)
				: api.post(asked.action()).on(form.seen()).once(form.key()).send(body);
		if (outcome.refusal() != null) {
			refuse(outcome.refusal(), asked, form, response);
			return view;
		}
		if (look) {
			model.addAttribute("foreseen", Foreseen.of(outcome.json(), asked.words()));
			return view;
		}
		return "redirect:" + then.apply(outcome.json());
	}

	/** Who comes too late decides on the present state, which the page shows, anew. */
	private static void refuse(Refusal refusal, Asked asked, Form form, HttpServletResponse response) {
		form.refuse(refusal);
		response.setStatus(refusal.type().status().value());
		if (refusal.type() == ProblemType.STALE || refusal.type() == ProblemType.KEY_REUSED) {
			form.anew().seen(asked.seen());
		}
	}

	private ObjectNode body(Asked asked, Form form) {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		for (Entry entry : asked.decision().entries()) {
			switch (entry.kind()) {
				case FIGURE -> form.number(body, entry.name(), asked.words().say("decide.no-number"));
				case TICKS -> {
					if (form.isFilled(entry.name())) {
						form.list(body, entry.name());
					}
				}
				case YES_NO -> {
					if (form.isFilled(entry.name())) {
						body.put(entry.name(), form.has(entry.name(), "yes"));
					}
				}
				case SPECIES -> this.species.key(form, entry.name(), form.value(entry.name()))
					.ifPresent((key) -> body.put(entry.name(), key));
				case LINE, AREA, DAY, RADIOS, LIST -> form.text(body, entry.name());
			}
		}
		return body;
	}

}

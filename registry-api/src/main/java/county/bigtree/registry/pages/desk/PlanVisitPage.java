package county.bigtree.registry.pages.desk;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.Viewer;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.form.Refusal;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;

/**
 * Plans a visit: a verifier for themselves, a coordinator for any verifier of their
 * counties; one of another county goes as a guest.
 */
@Controller
@Hidden
class PlanVisitPage {

	private final Desks desks;

	PlanVisitPage(Desks desks) {
		this.desks = desks;
	}

	@GetMapping("/visits/plan")
	@Access(Who.VERIFIER)
	String plan(Api api, Form form, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units, Model model) {
		show(api, form, viewer, units, model);
		return "plan-visit";
	}

	@PostMapping("/visits/plan")
	@Access(Who.VERIFIER)
	String plan(Api api, Form form, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units, Model model, HttpServletResponse response) {
		AtTree at = show(api, form, viewer, units, model);
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		List.of("tree", "purpose", "verifier", "companion", "byWhen", "arrangedOn", "notes")
			.forEach((entry) -> form.text(body, entry));
		if (form.isFilled("verifier") && at != null && viewer != null && viewer.coordinates().contains(at.county())
				&& !AskAboutCase.people(api, at.county()).containsKey(form.value("verifier"))) {
			body.put("guest", true);
		}
		Api.Outcome planned = api.post("/visits").once(form.key()).send(body);
		Refusal refusal = planned.refusal();
		if (refusal == null) {
			return "redirect:/visits/" + planned.json().path("id").asString("") + "?done=planned";
		}
		form.refuse(refusal);
		HttpStatus status = refusal.type().status();
		response.setStatus(status.value());
		return "plan-visit";
	}

	private @Nullable AtTree show(Api api, Form form, @Nullable Viewer viewer, Units units, Model model) {
		AtTree at = form.isFilled("tree") ? AtTree.find(api, form.value("tree")) : null;
		DeskWords words = (at != null) ? this.desks.open(at.county(), units, model)
				: this.desks.wordsOf(java.time.ZoneOffset.UTC, units, model);
		model.addAttribute("at", at);
		model.addAttribute("purposes",
				words.choices("visit.purpose.", List.of("sign-off", "remeasure", "condition", "doubt")));
		Map<String, String> verifiers = new LinkedHashMap<>();
		verifiers.put("", words.say("visit.verifier.me"));
		Set<String> counties = (viewer != null) ? Set.copyOf(viewer.coordinates()) : Set.of();
		counties.stream().sorted().forEach((county) -> verifiers.putAll(AskAboutCase.people(api, county)));
		model.addAttribute("verifiers", verifiers);
		return at;
	}

}

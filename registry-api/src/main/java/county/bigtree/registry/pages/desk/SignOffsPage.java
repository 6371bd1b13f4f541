package county.bigtree.registry.pages.desk;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.Viewer;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.form.Plain;
import io.swagger.v3.oas.annotations.Hidden;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;

/**
 * A sign-off with its agreement.
 */
@Controller
@Hidden
class SignOffsPage {

	private final Desks desks;

	SignOffsPage(Desks desks) {
		this.desks = desks;
	}

	@GetMapping("/sign-offs/{id}")
	@Access(Who.VERIFIER)
	String signOff(@PathVariable String id, Api api, Form form, @ModelAttribute("units") Units units,
			@ModelAttribute("viewer") @Nullable Viewer viewer, Model model) {
		JsonNode signOff = api.get("/sign-offs/{id}", id);
		AtTree at = AtTree.read(api, signOff.path("tree").asString(""));
		DeskWords words = this.desks.open(at.county(), units, model);
		model.addAttribute("signOff", Plain.map(signOff));
		model.addAttribute("at", at);
		model.addAttribute("facts", AskAboutSignOff.facts(signOff, at, words));
		model.addAttribute("decides", viewer != null && viewer.coordinates().contains(at.county()));
		return "sign-off-given";
	}

}

package county.bigtree.registry.pages.office;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.form.Refusal;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * Who owns a tree, what they consent to, and what the public is shown of it for that.
 */
@Controller
@Hidden
class OwnersPage {

	private static final List<String> PURPOSES = List.of("visit", "listing", "place", "photos");

	private static final List<String> HOW = List.of("form", "letter", "e-mail", "telephone", "in-person");

	private static final List<String> SHOWN = List.of("exact", "nearby", "county");

	private final Choices choices;

	OwnersPage(Choices choices) {
		this.choices = choices;
	}

	@GetMapping("/desk/{county}/owners")
	@Access(Who.COORDINATOR)
	String find(@PathVariable String county, @RequestParam(defaultValue = "") String tree, Api api, Form form,
			Model model) {
		if (!tree.isBlank()) {
			JsonNode found = api.find("/trees/{tree}", tree.strip());
			if (found != null && found.path("county").asString("").equals(county)) {
				return "redirect:/trees/" + found.path("tag").asString("") + "/owners";
			}
			form.refuse("tree", "No tree of this county has this tag.");
		}
		model.addAttribute("county", api.get("/counties/{county}", county));
		return "owners-find";
	}

	@GetMapping("/trees/{tree}/owners")
	@Access(Who.COORDINATOR)
	String show(@PathVariable String tree, @RequestParam(required = false) @Nullable String done, Api api,
			Model model) {
		Form form = Form.empty();
		model.addAttribute("form", form);
		model.addAttribute("done", done);
		return page(tree, api, form, model);
	}

	@PostMapping("/trees/{tree}/owners")
	@Access(Who.COORDINATOR)
	String add(@PathVariable String tree, Api api, Form form, Model model, HttpServletResponse response) {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		form.text(body, "name").text(body, "contact");
		Api.Outcome outcome = api.post("/trees/{tree}/owners", tree).once(form.key()).send(body);
		return Answers.refused(outcome, form, response) ? page(tree, api, form, model) : done(tree, "added");
	}

	@PostMapping("/trees/{tree}/owners/{owner}/consents")
	@Access(Who.COORDINATOR)
	String consent(@PathVariable String tree, @PathVariable UUID owner, Api api, Form form, Model model,
			HttpServletResponse response) {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		form.list(body, "purposes");
		if (form.isFilled("given")) {
			body.put("given", form.has("given", "yes"));
		}
		form.text(body, "how").text(body, "givenOn").text(body, "until").text(body, "remarks");
		Api.Outcome outcome = api.post("/owners/{owner}/consents", owner).once(form.key()).send(body);
		return refused(outcome, owner, form, response) ? page(tree, api, form, model) : done(tree, "said");
	}

	@PostMapping("/trees/{tree}/owners/{owner}/end")
	@Access(Who.COORDINATOR)
	String end(@PathVariable String tree, @PathVariable UUID owner, Api api, Form form, Model model,
			HttpServletResponse response) {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		body.put("reason", form.value("reason"));
		Api.Outcome outcome = api.post("/owners/{owner}/end", owner).once(form.key()).send(body);
		return refused(outcome, owner, form, response) ? page(tree, api, form, model) : done(tree, "ended");
	}

	@PostMapping("/trees/{tree}/owners/{owner}/erasure")
	@Access(Who.COORDINATOR)
	String erase(@PathVariable String tree, @PathVariable UUID owner, Api api) {
		Answers.require(api.post("/owners/{owner}/erasure", owner).send());
		return done(tree, "erased");
	}

	@PostMapping("/trees/{tree}/owners/visibility")
	@Access(Who.COORDINATOR)
	String visibility(@PathVariable String tree, Api api, Form form, Model model, HttpServletResponse response) {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		form.text(body, "visibility");
		body.put("reason", form.value("shownBecause"));
		Refusal refusal = api.post("/trees/{tree}/visibility", tree)
			.on(form.seen())
			.once(form.key())
			.send(body)
			.refusal();
		if (refusal == null) {
			return done(tree, "shown");
		}
		form.refuse(refusal, (field) -> field.equals("reason") ? "shownBecause" : field);
		response.setStatus(refusal.type().status().value());
		return page(tree, api, form, model);
	}

	/** Fields of one of several owners bear the owner's id. */
	private static boolean refused(Api.Outcome outcome, UUID owner, Form form, HttpServletResponse response) {
		Refusal refusal = outcome.refusal();
		if (refusal == null) {
			return false;
		}
		form.refuse(refusal, (field) -> field + "-" + owner);
		Answers.anew(refusal, form);
		response.setStatus(refusal.type().status().value());
		return true;
	}

	private static String done(String tree, String what) {
		return "redirect:/trees/" + tree + "/owners?done=" + what;
	}

	private String page(String tree, Api api, Form form, Model model) {
		Api.Read read = api.read("/trees/{tree}", tree);
		JsonNode county = api.get("/counties/{county}", read.json().path("county").asString(""));
		JsonNode owners = api.get("/trees/{tree}/owners", tree).path("items");
		When when = When.in(county);
		model.addAttribute("tree", read.json());
		model.addAttribute("seen", read.seen());
		model.addAttribute("county", county);
		model.addAttribute("when", when);
		model.addAttribute("today", LocalDate.now(java.time.Clock.system(when.zone())).toString());
		model.addAttribute("owners", owners);
		model.addAttribute("why", Shown.why(read.json(), owners));
		model.addAttribute("purposes", this.choices.of("owners.purpose.", PURPOSES));
		model.addAttribute("hows", this.choices.of("owners.how.", HOW));
		model.addAttribute("visibilities", this.choices.of("owners.shown.", SHOWN));
		return "owners";
	}

}

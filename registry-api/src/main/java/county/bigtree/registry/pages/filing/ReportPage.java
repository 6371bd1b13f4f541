package county.bigtree.registry.pages.filing;

import java.util.List;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.people.Actor;
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
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;

/**
 * Reporting in what condition a tree was found.
 */
@Controller
@Hidden
class ReportPage {

	private static final List<String> CONDITIONS = List.of("upright", "declining", "damaged", "dead", "fallen",
			"removed", "not-found");

	private static final List<String> BEGAN = List.of("began", "between.earliest", "between.latest");

	private final FilingWords words;

	private final RegisterClock clock;

	ReportPage(FilingWords words, RegisterClock clock) {
		this.words = words;
		this.clock = clock;
	}

	@GetMapping("/trees/{tree}/report")
	@Access(Who.VOLUNTEER)
	String show(@PathVariable String tree, Api api, Form form, @ModelAttribute("units") Units units, Actor actor,
			Model model) {
		AboutTree about = AboutTree.of(api, tree, units);
		if (!form.isFilled("observedOn")) {
			form.put("observedOn", about.words().date(this.clock.now()).toString());
		}
		model.addAttribute("fresh", true);
		return page(about, actor, model);
	}

	/** Of a tree that is named in the form: a page that can be kept for all of them. */
	@GetMapping("/report")
	@Access(Who.VOLUNTEER)
	String showByTag(Api api, Form form, Actor actor, Model model) {
		if (!form.isFilled("observedOn")) {
			form.put("observedOn", OwnCounties.of(api, actor).today(this.clock.now()).toString());
		}
		model.addAttribute("fresh", true);
		return page(null, actor, model);
	}

	@PostMapping("/report")
	@Access(Who.VOLUNTEER)
	String sendByTag(Api api, Form form, @ModelAttribute("units") Units units, Actor actor, Model model,
			HttpServletResponse response) {
		return send(api, form, AboutTree.named(api, form, this.words, units), actor, model, response);
	}

	@PostMapping("/trees/{tree}/report")
	@Access(Who.VOLUNTEER)
	String send(@PathVariable String tree, Api api, Form form, @ModelAttribute("units") Units units, Actor actor,
			Model model, HttpServletResponse response) {
		return send(api, form, AboutTree.of(api, tree, units), actor, model, response);
	}

	private String send(Api api, Form form, @Nullable AboutTree about, Actor actor, Model model,
			HttpServletResponse response) {
		if (!CONDITIONS.contains(form.value("condition"))) {
			form.refuse("condition", this.words.get("report.condition.missing"));
		}
		if (!form.isFilled("observedOn")) {
			form.refuse("observedOn", this.words.get("report.observedOn.missing"));
		}
		if (about == null || form.isWrong()) {
			response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
			return page(about, actor, model);
		}
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		form.text(body, "condition").text(body, "observedOn").text(body, "remarks");
		if (actor.isCoordinatorOf(about.county())) {
			BEGAN.forEach((entry) -> form.text(body, entry));
		}
		Api.Outcome outcome = api.post("/trees/{tree}/condition-reports", about.id()).once(form.key()).send(body);
		if (outcome.refusal() == null) {
			return "redirect:/mine?done=reported&tree=" + about.tag();
		}
		Refused.take(outcome.refusal(), form, this.words, response, ReportPage::field);
		return page(about, actor, model);
	}

	private static String field(String entry) {
		return entry.equals("between") ? "between.earliest" : entry;
	}

	private static String page(@Nullable AboutTree about, Actor actor, Model model) {
		model.addAttribute("about", about);
		model.addAttribute("practice", about != null && about.practice());
		model.addAttribute("person", actor.id());
		model.addAttribute("conditions", CONDITIONS);
		model.addAttribute("decides", about != null && actor.isCoordinatorOf(about.county()));
		return "report";
	}

}

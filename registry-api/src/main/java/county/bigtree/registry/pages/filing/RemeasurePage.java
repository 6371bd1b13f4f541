package county.bigtree.registry.pages.filing;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.measure.TypedFigures;
import county.bigtree.registry.people.Actor;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.node.ObjectNode;

import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * Measuring a tree of the register again, in the steps of a nomination without those that
 * the register knows already.
 */
@Controller
@Hidden
class RemeasurePage {

	private static final List<String> STEPS = List.of("girth", "height", "crown", "people", "look");

	private final FilingWords words;

	private final RegisterClock clock;

	RemeasurePage(FilingWords words, RegisterClock clock) {
		this.words = words;
		this.clock = clock;
	}

	@GetMapping("/trees/{tree}/remeasure")
	@Access(Who.VOLUNTEER)
	String show(@PathVariable String tree, Api api, Form form, @RequestParam Map<String, String> typed,
			@ModelAttribute("units") Units units, Actor actor, Model model) {
		AboutTree about = AboutTree.of(api, tree, units);
		LocalDate today = about.words().date(this.clock.now());
		if (!form.isFilled("measuredOn")) {
			form.put("measuredOn", today.toString());
		}
		if (!form.isFilled("measuredBy")) {
			form.put("measuredBy", actor.creditName());
		}
		model.addAttribute("fresh", true);
		return page(form, about, TypedFigures.of(typed, units), actor, form.value("step"), model);
	}

	/** Of a tree that is named in the form: a page that can be kept for all of them. */
	@GetMapping("/remeasure")
	@Access(Who.VOLUNTEER)
	String showByTag(Api api, Form form, @RequestParam Map<String, String> typed, @ModelAttribute("units") Units units,
			Actor actor, Model model) {
		if (!form.isFilled("measuredOn")) {
			form.put("measuredOn", OwnCounties.of(api, actor).today(this.clock.now()).toString());
		}
		if (!form.isFilled("measuredBy")) {
			form.put("measuredBy", actor.creditName());
		}
		model.addAttribute("fresh", true);
		return page(form, null, TypedFigures.of(typed, units), actor, form.value("step"), model);
	}

	@PostMapping("/remeasure")
	@Access(Who.VOLUNTEER)
	String sendByTag(Api api, Form form, @RequestParam Map<String, String> typed, @ModelAttribute("units") Units units,
			Actor actor, Model model, HttpServletResponse response) {
		AboutTree about = AboutTree.named(api, form, this.words, units);
		if (about == null) {
			response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
			return page(form, null, TypedFigures.of(typed, units), actor, form.value("step"), model);
		}
		return send(api, form, about, TypedFigures.of(typed, units), actor, model, response);
	}

	@PostMapping("/trees/{tree}/remeasure")
	@Access(Who.VOLUNTEER)
	String send(@PathVariable String tree, Api api, Form form, @RequestParam Map<String, String> typed,
			@ModelAttribute("units") Units units, Actor actor, Model model, HttpServletResponse response) {
		return send(api, form, AboutTree.of(api, tree, units), TypedFigures.of(typed, units), actor, model, response);
	}

	private String send(Api api, Form form, AboutTree about, TypedFigures figures, Actor actor, Model model,
			HttpServletResponse response) {
		String go = form.value("go");
		String step = form.value("step");
		if (go.isEmpty() || go.equals("file")) {
			return file(api, form, about, figures, actor, model, response);
		}
		if (go.equals(Steps.NEXT)) {
			MeasurementEntries.require(step, form, figures, this.words);
		}
		if (form.isWrong()) {
			response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
			return page(form, about, figures, actor, step, model);
		}
		return page(form, about, figures, actor, Steps.led(STEPS, step, go), model);
	}

	private String file(Api api, Form form, AboutTree about, TypedFigures figures, Actor actor, Model model,
			HttpServletResponse response) {
		MeasurementEntries.require(MeasurementEntries.ALL, form, figures, this.words);
		ObjectNode body = MeasurementEntries.body(form, figures, actor);
		MeasurementEntries.confirm(form, body, body);
		if (form.isWrong()) {
			response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
			return page(form, about, figures, actor, "look", model);
		}
		Api.Outcome outcome = api.post("/trees/{tree}/measurements", about.id()).once(form.key()).send(body);
		if (outcome.refusal() == null) {
			return "redirect:/measurements/" + outcome.json().path("id").asString("") + "?done=filed";
		}
		Refused.take(outcome.refusal(), form, this.words, response,
				(entry) -> MeasurementEntries.field(entry, figures));
		return page(form, about, figures, actor, "look", model);
	}

	private static String page(Form form, @Nullable AboutTree about, TypedFigures figures, Actor actor, String step,
			Model model) {
		model.addAttribute("steps", Steps.of(STEPS, step, form.errors().keySet(),
				(field) -> field.equals(AboutTree.FIELD) ? "" : MeasurementEntries.step(field)));
		model.addAttribute("about", about);
		model.addAttribute("practice", about != null && about.practice());
		model.addAttribute("person", actor.id());
		figures.show(model);
		return "remeasure";
	}

}

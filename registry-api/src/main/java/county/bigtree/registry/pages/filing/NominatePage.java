package county.bigtree.registry.pages.filing;

import java.time.LocalDate;
import java.time.ZoneId;
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
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * Nominating a tree, in steps. The whole form stands in every page that is sent, so that
 * nothing typed is lost on the way and going on needs no network where scripts run.
 */
@Controller
@Hidden
class NominatePage {

	private final FilingWords words;

	private final RegisterClock clock;

	NominatePage(FilingWords words, RegisterClock clock) {
		this.words = words;
		this.clock = clock;
	}

	/** An empty form, or one that the address fills in part. */
	@GetMapping("/nominate")
	@Access(Who.VOLUNTEER)
	String show(Api api, Form form, @RequestParam Map<String, String> typed, @ModelAttribute("units") Units units,
			Actor actor, Model model) {
		OwnCounties counties = OwnCounties.of(api, actor);
		propose(form, "county", counties.proposed(api));
		propose(form, "access", "by-permission");
		propose(form, "visibility", "nearby");
		propose(form, "measuredOn", today(counties, form.value("county")).toString());
		propose(form, "measuredBy", actor.creditName());
		Filing filing = new Filing(counties, SpeciesChoice.of(api, form), TypedFigures.of(typed, units), actor);
		model.addAttribute("fresh", true);
		return page(form, filing, form.value("step"), model);
	}

	@PostMapping("/nominate")
	@Access(Who.VOLUNTEER)
	String send(Api api, Form form, @RequestParam Map<String, String> typed, @ModelAttribute("units") Units units,
			Actor actor, Model model, HttpServletResponse response) {
		Place.part(form);
		Filing filing = new Filing(OwnCounties.of(api, actor), SpeciesChoice.of(api, form),
				TypedFigures.of(typed, units), actor);
		String go = form.value("go");
		String step = form.value("step");
		if (go.isEmpty() || go.equals("file")) {
			return file(api, form, filing, model, response);
		}
		if (go.equals(Steps.NEXT)) {
			NominationEntries.require(step, form, filing.species(), filing.figures(), filing.counties().keys(),
					this.words);
		}
		if (form.isWrong()) {
			response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
			return page(form, filing, step, model);
		}
		String led = Steps.led(NominationEntries.STEPS, step, go);
		if (led.equals("look")) {
			compare(api, form, filing, model);
		}
		return page(form, filing, led, model);
	}

	private String file(Api api, Form form, Filing filing, Model model, HttpServletResponse response) {
		NominationEntries.require(MeasurementEntries.ALL, form, filing.species(), filing.figures(),
				filing.counties().keys(), this.words);
		ObjectNode body = NominationEntries.body(form, filing.figures(), filing.actor(), this.words);
		if (form.isWrong()) {
			response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
			return page(form, filing, "look", model);
		}
		Api.Outcome outcome = api.post("/counties/{county}/nominations", form.value("county"))
			.once(form.key())
			.send(body);
		if (outcome.refusal() == null) {
			return "redirect:/nominations/" + outcome.json().path("id").asString("") + "?done=filed";
		}
		Refused.take(outcome.refusal(), form, this.words, response,
				(entry) -> NominationEntries.field(entry, filing.figures()));
		compare(api, form, filing, model);
		return page(form, filing, "look", model);
	}

	private String page(Form form, Filing filing, String step, Model model) {
		Steps steps = Steps.of(NominationEntries.STEPS, step, form.errors().keySet(), NominationEntries::step);
		model.addAttribute("steps", steps);
		model.addAttribute("ownCounties", filing.counties().names());
		model.addAttribute("species", filing.species());
		model.addAttribute("person", filing.actor().id());
		model.addAttribute("practice", filing.counties().practice(form.value("county")));
		filing.figures().show(model);
		return "nominate";
	}

	/** How it would stand, where all three figures are there. */
	private static void compare(Api api, Form form, Filing filing, Model model) {
		if (filing.figures().score().isPresent() && filing.species().chosen() != null) {
			ObjectNode body = JsonNodeFactory.instance.objectNode();
			filing.figures().put(body);
			body.put("species", form.value("species")).put("county", form.value("county"));
			Api.Outcome compared = api.post("/measuring/points").send(body);
			if (compared.isDone() && compared.json().path("comparison").isObject()) {
				model.addAttribute("comparison", compared.json().path("comparison"));
			}
		}
	}

	private LocalDate today(OwnCounties counties, String county) {
		JsonNode known = counties.byKey().get(county);
		String zone = (known != null) ? known.path("timeZone").asString("UTC") : "UTC";
		return LocalDate.ofInstant(this.clock.now(), ZoneId.of(zone));
	}

	private static void propose(Form form, String field, @Nullable String value) {
		if (!form.isFilled(field)) {
			form.put(field, value);
		}
	}

	/**
	 * A nomination in the making.
	 */
	private record Filing(OwnCounties counties, SpeciesChoice species, TypedFigures figures, Actor actor) {
	}

}

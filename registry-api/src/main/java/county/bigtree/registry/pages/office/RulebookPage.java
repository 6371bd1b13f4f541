package county.bigtree.registry.pages.office;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.StreamSupport;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.naming.Names;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.form.SpeciesField;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * A county's rules by date, and new ones: what they would change is looked at before they
 * are decided.
 */
@Controller
@Hidden
class RulebookPage {

	private static final String ADDRESS = "/counties/{county}/rulebooks";

	private final Choices choices;

	private final SpeciesField species;

	RulebookPage(Choices choices, SpeciesField species) {
		this.species = species;
		this.choices = choices;
	}

	@GetMapping("/desk/{county}/rulebook")
	@Access(Who.COORDINATOR)
	String show(@PathVariable String county, @RequestParam(required = false) @Nullable String done, Api api,
			@ModelAttribute("names") Names names, Model model) {
		JsonNode books = api.get(ADDRESS, county).path("items");
		JsonNode found = api.get("/counties/{county}", county);
		LocalDate today = today(found);
		Form form = RulebookForm.fill(Form.empty(), inForce(books, today)).put("effectiveOn", today.toString());
		RulebookForm.fillSpecies(form, inForce(books, today), names);
		model.addAttribute("form", form);
		model.addAttribute("done", done);
		return page(found, books, chosen(inForce(books, today).path("titleMethods")), model);
	}

	@PostMapping("/desk/{county}/rulebook")
	@Access(Who.COORDINATOR)
	String decide(@PathVariable String county, Api api, Form form, Model model, HttpServletResponse response) {
		JsonNode books = api.get(ADDRESS, county).path("items");
		JsonNode found = api.get("/counties/{county}", county);
		ObjectNode body = RulebookForm.body(form, inForce(books, today(found)));
		RulebookForm.species(form, body, this.species);
		if (form.isWrong()) {
			response.setStatus(422);
			return page(found, books, form.values("titleMethods"), model);
		}
		if (form.has("do", "decide")) {
			Api.Outcome outcome = api.post(ADDRESS, county).once(form.key()).send(body);
			return refused(outcome, form, response) ? page(found, books, form.values("titleMethods"), model)
					: "redirect:/desk/" + county + "/rulebook?done=decided";
		}
		Api.Outcome outcome = api.post(ADDRESS + "?dryRun=true", county).send(body);
		if (!refused(outcome, form, response)) {
			model.addAttribute("effects", outcome.json());
			model.addAttribute("ifToday", ifToday(county, body, today(found), api));
		}
		return page(found, books, form.values("titleMethods"), model);
	}

	/**
	 * Rules of a later day change nothing yet: what they would change if they held today.
	 */
	private static @Nullable JsonNode ifToday(String county, ObjectNode body, LocalDate today, Api api) {
		if (body.path("effectiveOn").asString("").compareTo(today.toString()) <= 0) {
			return null;
		}
		Api.Outcome outcome = api.post(ADDRESS + "?dryRun=true", county)
			.send(body.deepCopy().put("effectiveOn", today.toString()));
		return outcome.isDone() ? outcome.json() : null;
	}

	private static boolean refused(Api.Outcome outcome, Form form, HttpServletResponse response) {
		if (outcome.refusal() == null) {
			return false;
		}
		form.refuse(outcome.refusal(), (field) -> field.startsWith("eligibleSpecies") ? "eligibleSpecies"
				: field.startsWith("titleMethods") ? "titleMethods" : field);
		Answers.anew(outcome.refusal(), form);
		response.setStatus(outcome.refusal().type().status().value());
		return true;
	}

	private static List<String> chosen(JsonNode methods) {
		return StreamSupport.stream(methods.spliterator(), false).map((method) -> method.asString("")).toList();
	}

	private String page(JsonNode county, JsonNode books, List<String> methods, Model model) {
		model.addAttribute("chosen", methods);
		model.addAttribute("county", county);
		model.addAttribute("when", When.in(county));
		model.addAttribute("books", books);
		model.addAttribute("present", inForce(books, today(county)));
		model.addAttribute("today", today(county).toString());
		model.addAttribute("ties", this.choices.of("rules.tie.", List.of("points", "percent", "uncertainty")));
		model.addAttribute("stales", this.choices.of("rules.stale.", List.of("keeps", "vacant", "passes")));
		model.addAttribute("slopes", this.choices.of("rules.slope.", List.of("uphill", "midslope")));
		model.addAttribute("methods", this.choices.of("method.", RulebookForm.METHODS));
		return "rulebook";
	}

	/** The rules of today: the first that have begun, the latest being the first. */
	private static JsonNode inForce(JsonNode books, LocalDate today) {
		for (JsonNode book : books) {
			if (book.path("effectiveOn").asString("").compareTo(today.toString()) <= 0) {
				return book;
			}
		}
		return books.path(0);
	}

	private static LocalDate today(JsonNode county) {
		return LocalDate.now(java.time.Clock.system(When.in(county).zone()));
	}

}

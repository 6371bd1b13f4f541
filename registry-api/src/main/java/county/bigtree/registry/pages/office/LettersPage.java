package county.bigtree.registry.pages.office;

import java.util.List;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.form.Refusal;
import county.bigtree.registry.pages.form.SpeciesField;
import county.bigtree.registry.problem.Problem;
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
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * Letters to a county, and what becomes of one: the coordinator chooses that first, and
 * then fills in what it takes.
 */
@Controller
@RequestMapping("/desk/{county}/letters")
@Hidden
class LettersPage {

	private static final List<String> BECOMES = List.of("answer", "report", "visit", "correction", "nothing");

	private static final List<String> CONDITIONS = List.of("upright", "declining", "damaged", "dead", "fallen",
			"removed", "not-found");

	private static final List<String> PURPOSES = List.of("doubt", "condition", "remeasure", "sign-off");

	private static final List<String> SHOWN = List.of("exact", "nearby", "county");

	private final Choices choices;

	private final SpeciesField species;

	LettersPage(Choices choices, SpeciesField species) {
		this.species = species;
		this.choices = choices;
	}

	@GetMapping
	@Access(Who.COORDINATOR)
	String list(@PathVariable String county, @RequestParam(defaultValue = "open") String show,
			@RequestParam(defaultValue = "") String cursor, Api api, Model model) {
		JsonNode found = api.get("/counties/{county}", county);
		String open = switch (show) {
			case "told" -> "&open=false";
			case "all" -> "";
			default -> "&open=true";
		};
		String from = cursor.isEmpty() ? "{cursor}" : "&cursor={cursor}";
		model.addAttribute("county", found);
		model.addAttribute("when", When.in(found));
		model.addAttribute("show", show);
		model.addAttribute("letters", api.get("/counties/{county}/letters?limit=50" + open + from, county, cursor));
		return "letters";
	}

	@GetMapping("/{letter}")
	@Access(Who.COORDINATOR)
	String open(@PathVariable String county, @PathVariable UUID letter,
			@RequestParam(required = false) @Nullable String done, Api api, Form form, Model model) {
		model.addAttribute("done", done);
		return page(county, letter, api, form, model);
	}

	@PostMapping("/{letter}")
	@Access(Who.COORDINATOR)
	String decide(@PathVariable String county, @PathVariable UUID letter, Api api, Form form, Model model,
			HttpServletResponse response) {
		ObjectNode body = outcome(form);
		if (form.has("became", "correction")) {
			this.species.key(form, "species", form.value("species"))
				.ifPresent((key) -> body.withObjectProperty("correction").put("species", key));
		}
		if (form.isWrong()) {
			response.setStatus(422);
			return page(county, letter, api, form, model);
		}
		Refusal refusal = api.post("/letters/{letter}/outcome", letter).once(form.key()).send(body).refusal();
		if (refusal != null) {
			form.refuse(refusal, (field) -> field.replaceFirst("^(report|visit|correction)\\.", ""));
			Answers.anew(refusal, form);
			response.setStatus(refusal.type().status().value());
			return page(county, letter, api, form, model);
		}
		return "redirect:/desk/" + county + "/letters/" + letter + "?done=told";
	}

	@PostMapping("/{letter}/erasure")
	@Access(Who.COORDINATOR)
	String erase(@PathVariable String county, @PathVariable UUID letter, Api api) {
		Answers.require(api.post("/letters/{letter}/erasure", letter).send());
		return "redirect:/desk/" + county + "/letters/" + letter + "?done=erased";
	}

	private static ObjectNode outcome(Form form) {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		String became = form.value("became");
		form.text(body, "became").text(body, "answer");
		ObjectNode part = JsonNodeFactory.instance.objectNode();
		List<String> fields = switch (became) {
			case "report" -> List.of("tree", "condition", "observedOn", "remarks");
			case "visit" -> List.of("tree", "purpose", "byWhen", "notes");
			case "correction" -> List.of("tree", "visibility", "by", "reason");
			default -> List.of();
		};
		if (!fields.isEmpty()) {
			fields.forEach((field) -> form.text(part, field));
			body.set(became, part);
		}
		return body;
	}

	private String page(String county, UUID letter, Api api, Form form, Model model) {
		JsonNode found = api.get("/counties/{county}", county);
		JsonNode opened = api.get("/letters/{letter}", letter);
		if (!opened.path("county").asString("").equals(county)) {
			throw Problem.notFound("No letter to this county has this id.");
		}
		if (!form.isFilled("tree") && opened.hasNonNull("tag")) {
			form.put("tree", opened.path("tag").asString(""));
		}
		model.addAttribute("county", found);
		model.addAttribute("when", When.in(found));
		model.addAttribute("letter", opened);
		model.addAttribute("became", BECOMES.contains(form.value("became")) ? form.value("became") : null);
		model.addAttribute("becomes", BECOMES);
		model.addAttribute("conditions", this.choices.orNone("people.choose", "condition.", CONDITIONS));
		model.addAttribute("purposes", this.choices.of("desk-letter.purpose.", PURPOSES));
		model.addAttribute("shown", this.choices.orNone("desk-letter.correction.none", "owners.shown.", SHOWN));
		model.addAttribute("told",
				this.choices.of("desk-letter.by.", List.of("record", "leaf", "fruit", "bark", "bud")));
		return "desk-letter";
	}

}

package county.bigtree.registry.pages.desk;

import java.util.List;
import java.util.Map;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.Viewer;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.form.Plain;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;

/**
 * A county's editions at its desk: announced, published, and with what turns out wrong in
 * them noted.
 */
@Controller
@Hidden
class EditionsDesk {

	private final Desks desks;

	private final Deciding deciding;

	EditionsDesk(Desks desks, Deciding deciding) {
		this.desks = desks;
		this.deciding = deciding;
	}

	@GetMapping("/desk/{county}/editions")
	@Access(Who.COORDINATOR)
	String list(@PathVariable String county, Api api, Form form, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units, Model model) {
		this.desks.openForCoordinator(county, viewer, units, model);
		model.addAttribute("editions", Plain.list(api.get("/counties/{county}/editions", county)));
		return "editions-desk";
	}

	@PostMapping("/desk/{county}/editions")
	@Access(Who.COORDINATOR)
	String announce(@PathVariable String county, Api api, Form form, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units, Model model, HttpServletResponse response) {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		form.text(body, "name").text(body, "filingsBy").text(body, "closesOn");
		form.number(body, "graceDays",
				this.desks.openForCoordinator(county, viewer, units, model).say("decide.no-number"));
		if (!form.isWrong()) {
			Api.Outcome outcome = api.post("/counties/{county}/editions", county).once(form.key()).send(body);
			if (outcome.refusal() == null) {
				return "redirect:/editions/" + outcome.json().path("id").asString("");
			}
			form.refuse(outcome.refusal());
			response.setStatus(outcome.refusal().type().status().value());
		}
		else {
			response.setStatus(ProblemType.INVALID.status().value());
		}
		return list(county, api, form, viewer, units, model);
	}

	@GetMapping("/editions/{edition}/publication")
	@Access(Who.COORDINATOR)
	String publication(@PathVariable String edition, Api api, Form form,
			@ModelAttribute("viewer") @Nullable Viewer viewer, @ModelAttribute("units") Units units, Model model) {
		this.deciding.show(ask(edition, api, viewer, units, model), form, model);
		return "decision";
	}

	@PostMapping("/editions/{edition}/publication")
	@Access(Who.COORDINATOR)
	String publish(@PathVariable String edition, Api api, Form form, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units, Model model, HttpServletResponse response) {
		Asked asked = ask(edition, api, viewer, units, model);
		return this.deciding.decide(asked, "decision", api, form, model, response, (done) -> asked.back());
	}

	@PostMapping("/editions/{edition}/errata")
	@Access(Who.COORDINATOR)
	String note(@PathVariable String edition, Api api, Form form, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units, Model model, HttpServletResponse response) {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		form.text(body, "tree").text(body, "text");
		Api.Outcome outcome = api.post("/editions/{edition}/errata", edition).once(form.key()).send(body);
		if (outcome.refusal() == null) {
			return "redirect:/editions/" + edition + "#errata";
		}
		form.refuse(outcome.refusal());
		response.setStatus(outcome.refusal().type().status().value());
		return erratum(edition, api, viewer, units, model);
	}

	@GetMapping("/editions/{edition}/errata")
	@Access(Who.COORDINATOR)
	String erratum(@PathVariable String edition, Api api, Form form, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units, Model model) {
		return erratum(edition, api, viewer, units, model);
	}

	private String erratum(String edition, Api api, @Nullable Viewer viewer, Units units, Model model) {
		model.addAttribute("edition", Plain.map(open(edition, api, viewer, units, model)));
		return "erratum";
	}

	private Asked ask(String edition, Api api, @Nullable Viewer viewer, Units units, Model model) {
		JsonNode found = open(edition, api, viewer, units, model);
		DeskWords words = (DeskWords) model.getAttribute("words");
		if (words == null) {
			throw new IllegalStateException("The desk was not opened");
		}
		List<Asked.Fact> facts = List.of(
				Asked.Fact.of(words.say("edition.filings-by"), words.day(found.path("filingsBy").asString(""))),
				Asked.Fact.of(words.say("edition.closes-on"), words.day(found.path("closesOn").asString(""))));
		String back = "/editions/" + found.path("id").asString("");
		return new Asked(Decision.PUBLICATION, back, back + "/publication", back,
				words.say("edition.heading", found.path("name").asString("")),
				api.read("/editions/{edition}", edition).seen(), facts, Map.of(), words);
	}

	private JsonNode open(String edition, Api api, @Nullable Viewer viewer, Units units, Model model) {
		JsonNode found = api.get("/editions/{edition}", edition);
		if (viewer == null || !viewer.coordinates().contains(found.path("county").asString(""))) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Editions are for the county's coordinators.");
		}
		this.desks.openForCoordinator(found.path("county").asString(""), viewer, units, model);
		return found;
	}

}

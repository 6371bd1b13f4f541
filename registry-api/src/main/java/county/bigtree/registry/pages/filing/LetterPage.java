package county.bigtree.registry.pages.filing;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.StreamSupport;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

import org.springframework.format.annotation.DateTimeFormat;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * Telling a county something, with or without an account: a tip, a doubt, that a tree
 * fell, a wish about one's own yard or data.
 */
@Controller
@Hidden
class LetterPage {

	private static final List<String> SUBJECTS = List.of("tip", "condition", "doubt", "owner", "privacy", "records",
			"accessibility", "other");

	private static final int COUNTIES = 500;

	private final FilingWords words;

	LetterPage(FilingWords words) {
		this.words = words;
	}

	/**
	 * To which county: the one where the tree stands, the only one, or one to be chosen.
	 */
	@GetMapping("/letter")
	@Access(Who.ANYONE)
	String choose(@RequestParam(defaultValue = "") String tree, Api api, Model model) {
		JsonNode known = tree.isEmpty() ? null : api.find("/trees/{tree}", tree);
		if (known != null) {
			return "redirect:/counties/" + known.path("county").asString("") + "/letter?tree="
					+ known.path("tag").asString("");
		}
		List<JsonNode> counties = StreamSupport
			.stream(api.get("/counties?limit={limit}", COUNTIES).path("items").spliterator(), false)
			.filter((county) -> !county.path("practice").asBoolean(false))
			.toList();
		if (counties.size() == 1) {
			return "redirect:/counties/" + counties.get(0).path("key").asString("") + "/letter";
		}
		model.addAttribute("counties", counties);
		return "letter-to";
	}

	@GetMapping("/counties/{county}/letter")
	@Access(Who.ANYONE)
	String show(@PathVariable String county, Form form,
			@RequestParam(required = false) @DateTimeFormat(iso = DateTimeFormat.ISO.DATE) @Nullable LocalDate answerBy,
			Api api, @ModelAttribute("units") Units units, Model model) {
		JsonNode known = page(county, api, model);
		if (answerBy != null) {
			model.addAttribute("answerBy", Days.of(known, units).words().day(answerBy));
			return "letter-sent";
		}
		return "letter";
	}

	@PostMapping("/counties/{county}/letter")
	@Access(Who.ANYONE)
	String send(@PathVariable String county, Form form, Api api, Model model, HttpServletResponse response) {
		page(county, api, model);
		if (!SUBJECTS.contains(form.value("about"))) {
			form.refuse("about", this.words.get("letter.about.missing"));
		}
		if (!form.isFilled("text")) {
			form.refuse("text", this.words.get("letter.text.missing"));
		}
		if (form.isWrong()) {
			response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
			return "letter";
		}
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		form.text(body, "about").text(body, "tree").text(body, "text").text(body, "contact");
		Api.Outcome outcome = api.post("/counties/{county}/letters", county).once(form.key()).send(body);
		if (outcome.refusal() == null) {
			return "redirect:/counties/" + county + "/letter?answerBy=" + outcome.json().path("answerBy").asString("");
		}
		Refused.take(outcome.refusal(), form, this.words, response, (entry) -> entry);
		return "letter";
	}

	private static JsonNode page(String county, Api api, Model model) {
		JsonNode known = api.get("/counties/{county}", county);
		model.addAttribute("to", known);
		model.addAttribute("practice", known.path("practice").asBoolean(false));
		model.addAttribute("subjects", SUBJECTS);
		return known;
	}

}

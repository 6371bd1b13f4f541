package county.bigtree.registry.pages.filing;

import java.util.List;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.nomination.NominationBook;
import county.bigtree.registry.pages.PhotosForTitle;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.ProblemType;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import tools.jackson.databind.JsonNode;
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
 * A nomination and what became of it. Its nominator answers here what was asked, or takes
 * it back.
 */
@Controller
@Hidden
class NominationPage {

	private final FilingWords words;

	private final NominationBook book;

	NominationPage(FilingWords words, NominationBook book) {
		this.words = words;
		this.book = book;
	}

	@GetMapping("/nominations/{id}")
	@Access(Who.SIGNED_IN)
	String show(@PathVariable UUID id, Api api, Form form, @ModelAttribute("units") Units units, Actor actor,
			Model model) {
		Api.Read read = api.read("/nominations/{id}", id);
		form.seen(read.seen());
		return page(read.json(), api, form, units, actor, model);
	}

	@PostMapping("/nominations/{id}")
	@Access(Who.SIGNED_IN)
	String move(@PathVariable UUID id, Api api, Form form, @ModelAttribute("units") Units units, Actor actor,
			Model model, HttpServletResponse response) {
		Api.Read read = api.read("/nominations/{id}", id);
		String move = form.value("move");
		if (move.equals("answer") && !form.isFilled("reason")) {
			form.refuse("reason", this.words.get("nomination.answer.missing"));
		}
		if (move.isEmpty()) {
			form.refuse("move", this.words.get("nomination.move.missing"));
		}
		if (form.isWrong()) {
			response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
			return page(read.json(), api, form, units, actor, model);
		}
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		form.text(body, "move").text(body, "reason");
		Api.Outcome outcome = api.post("/nominations/{id}/moves", id).on(form.seen()).once(form.key()).send(body);
		if (outcome.refusal() == null) {
			return "redirect:/nominations/" + id + "?done=moved";
		}
		response.setStatus(outcome.refusal().type().status().value());
		form.refuse(outcome.refusal());
		if (outcome.refusal().type() == ProblemType.STALE) {
			form.seen(read.seen());
		}
		return page(read.json(), api, form, units, actor, model);
	}

	private String page(JsonNode nomination, Api api, Form form, Units units, Actor actor, Model model) {
		JsonNode tree = api.find("/trees/{tree}", nomination.path("tree").asString(""));
		AboutTree about = AboutTree.of(api, tree, nomination.path("county").asString(""), units);
		UUID id = UUID.fromString(nomination.path("id").asString(""));
		model.addAttribute("nomination", nomination);
		model.addAttribute("about", about);
		model.addAttribute("words", about.words());
		model.addAttribute("practice", about.practice());
		model.addAttribute("own", this.book.get(id).nominator().equals(actor.id()));
		if (List.of("submitted", "under-review", "returned").contains(nomination.path("status").asString(""))) {
			model.addAttribute("lacking", PhotosForTitle.lacking(api, about.county(), nomination.path("measurement")));
		}
		model.addAttribute("person", actor.id());
		model.addAttribute("asked", asked(nomination));
		model.addAttribute("done", form.value("done"));
		return "nomination";
	}

	/** What was asked when it was returned last; empty where it wasn't. */
	private static String asked(JsonNode nomination) {
		String asked = "";
		for (JsonNode move : nomination.path("moves")) {
			if (move.path("move").asString("").equals("return")) {
				asked = move.path("reason").asString("");
			}
		}
		return asked;
	}

}

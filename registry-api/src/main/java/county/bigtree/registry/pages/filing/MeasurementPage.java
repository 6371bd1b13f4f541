package county.bigtree.registry.pages.filing;

import java.util.List;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.measurement.ReadMeasurements;
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
 * A measurement that somebody filed, and what became of it. Who filed it takes it back
 * here.
 */
@Controller
@Hidden
class MeasurementPage {

	private final FilingWords words;

	private final NominationBook book;

	private final ReadMeasurements measurements;

	MeasurementPage(FilingWords words, NominationBook book, ReadMeasurements measurements) {
		this.words = words;
		this.book = book;
		this.measurements = measurements;
	}

	@GetMapping("/measurements/{id}")
	@Access(Who.VOLUNTEER)
	String show(@PathVariable UUID id, Api api, Form form, @ModelAttribute("units") Units units, Actor actor,
			Model model) {
		Api.Read read = api.read("/measurements/{id}", id);
		form.seen(read.seen());
		return page(read.json(), api, form, units, actor, model);
	}

	@PostMapping("/measurements/{id}")
	@Access(Who.VOLUNTEER)
	String move(@PathVariable UUID id, Api api, Form form, @ModelAttribute("units") Units units, Actor actor,
			Model model, HttpServletResponse response) {
		Api.Read read = api.read("/measurements/{id}", id);
		String move = form.value("move");
		if (move.isEmpty()) {
			form.refuse("move", this.words.get("nomination.move.missing"));
		}
		if (move.equals("withdraw") && !form.isFilled("reason")) {
			form.refuse("reason", this.words.get("measurement.withdraw.missing"));
		}
		if (form.isWrong()) {
			response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
			return page(read.json(), api, form, units, actor, model);
		}
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		form.text(body, "move").text(body, "reason");
		Api.Outcome outcome = api.post("/measurements/{id}/moves", id).on(form.seen()).once(form.key()).send(body);
		if (outcome.refusal() == null) {
			return "redirect:/measurements/" + id + "?done=moved";
		}
		response.setStatus(outcome.refusal().type().status().value());
		form.refuse(outcome.refusal());
		if (outcome.refusal().type() == ProblemType.STALE) {
			form.seen(read.seen());
		}
		return page(read.json(), api, form, units, actor, model);
	}

	private String page(JsonNode measurement, Api api, Form form, Units units, Actor actor, Model model) {
		UUID id = UUID.fromString(measurement.path("id").asString(""));
		UUID tree = UUID.fromString(measurement.path("tree").asString(""));
		AboutTree about = AboutTree.of(api, tree.toString(), units);
		model.addAttribute("measurement", measurement);
		model.addAttribute("about", about);
		model.addAttribute("words", about.words());
		model.addAttribute("practice", about.practice());
		model.addAttribute("own", this.measurements.get(id).filedBy().equals(actor.id()));
		this.book.ofTree(tree)
			.filter((one) -> one.measurement().equals(id))
			.ifPresent((one) -> model.addAttribute("nomination", one.id()));
		if (List.of("filed", "assigned").contains(measurement.path("status").asString(""))) {
			model.addAttribute("lacking", PhotosForTitle.lacking(api, about.county(), measurement));
		}
		model.addAttribute("person", actor.id());
		model.addAttribute("done", form.value("done"));
		return "measurement";
	}

}

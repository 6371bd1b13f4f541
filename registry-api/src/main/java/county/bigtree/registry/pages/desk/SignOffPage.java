package county.bigtree.registry.pages.desk;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.PhotosForTitle;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.Viewer;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.form.Plain;
import county.bigtree.registry.pages.form.Refusal;
import county.bigtree.registry.pages.measure.TypedFigures;
import county.bigtree.registry.problem.ProblemType;
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
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * Signing off: what was filed beside the verifier's own readings, how they agree, what it
 * would change, and the verdict.
 */
@Controller
@Hidden
class SignOffPage {

	private static final String VIEW = "sign-off";

	private final Desks desks;

	SignOffPage(Desks desks) {
		this.desks = desks;
	}

	@GetMapping("/measurements/{id}/sign-off")
	@Access(Who.VERIFIER_OR_GUEST)
	String show(@PathVariable String id, @RequestParam Map<String, String> typed, Api api, Form form,
			@ModelAttribute("viewer") @Nullable Viewer viewer, @ModelAttribute("units") Units units, Model model) {
		About about = about(id, api, typed, units, model);
		if (!form.isFilled("measuredOn")) {
			form.put("measuredOn", about.words().today().toString());
		}
		if (!form.isFilled("measuredBy") && viewer != null) {
			form.put("measuredBy", viewer.name());
		}
		return VIEW;
	}

	@PostMapping("/measurements/{id}/sign-off")
	@Access(Who.VERIFIER_OR_GUEST)
	String give(@PathVariable String id, @RequestParam Map<String, String> typed, Api api, Form form,
			@ModelAttribute("units") Units units, Model model, HttpServletResponse response) {
		About about = about(id, api, typed, units, model);
		if (form.has("go", "choose")) {
			return VIEW;
		}
		ObjectNode body = body(about, form);
		if (form.isWrong()) {
			response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
			return VIEW;
		}
		boolean look = !form.has("do", "sign");
		Api.Outcome outcome = look ? rehearse(api, about, body)
				: api.post("/measurements/{id}/sign-offs", about.id()).once(form.key()).send(body);
		Refusal refusal = outcome.refusal();
		if (refusal != null) {
			refuse(refusal, body, api, about, form, model);
			response.setStatus(refusal.type().status().value());
			return VIEW;
		}
		if (look) {
			tell(outcome.json(), model);
			model.addAttribute("foreseen", Foreseen.of(outcome.json(), about.words()));
			return VIEW;
		}
		String given = outcome.json().path("id").asString("");
		return "redirect:" + ((api.find("/sign-offs/{id}", given) != null) ? "/sign-offs/" + given + "?done=yes" : "/");
	}

	private About about(String id, Api api, Map<String, String> typed, Units units, Model model) {
		JsonNode measurement = api.get("/measurements/{id}", id);
		AtTree at = AtTree.read(api, measurement.path("tree").asString(""));
		DeskWords words = this.desks.open(at.county(), units, model);
		TypedFigures figures = TypedFigures.of(typed, units);
		model.addAttribute("at", at);
		model.addAttribute("facts", at.facts(words));
		model.addAttribute("measurement", Plain.map(measurement));
		model.addAttribute("lacking", PhotosForTitle.lacking(api, at.county(), measurement));
		model.addAttribute("readings", Readings.told(measurement.path("readings")));
		model.addAttribute("figures", figures);
		model.addAttribute("verdicts",
				words.choices("sign-off.verdict.", List.of("confirmed", "corrected", "not-confirmed")));
		model.addAttribute("declarations",
				Stream.of("1", "2", "3").map((one) -> words.say("sign-off.declare." + one)).toList());
		return new About(measurement.path("id").asString(""), figures, words);
	}

	private static ObjectNode body(About about, Form form) {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		form.text(body, "verdict").text(body, "remarks").list(body, "declares");
		if (!form.isFilled("verdict")) {
			form.refuse("verdict", about.words().say("sign-off.verdict.missing"));
		}
		about.figures().errors().forEach(form::refuse);
		if (about.figures().byName().values().stream().anyMatch((typed) -> !typed.isEmpty())) {
			ObjectNode own = body.putObject("measurement");
			form.text(own, "measuredOn").list(own, "confirmedChecks");
			var measurers = own.putArray("measuredBy");
			Stream.of(form.value("measuredBy").split(","))
				.map(String::strip)
				.filter((name) -> !name.isEmpty())
				.forEach(measurers::add);
			about.figures().put(own);
		}
		return body;
	}

	private static Api.Outcome rehearse(Api api, About about, ObjectNode body) {
		return api.post("/measurements/{id}/sign-offs?dryRun=true", about.id()).send(body);
	}

	private static void refuse(Refusal refusal, ObjectNode body, Api api, About about, Form form, Model model) {
		form.refuse(refusal, (entry) -> entry.replaceFirst("^measurement\\.", ""));
		if (refusal.asks()) {
			model.addAttribute("asks", Plain.list(refusal.body().path("checks")));
		}
		if (refusal.type() == ProblemType.REFUSED && body.has("measurement")) {
			ObjectNode any = body.deepCopy().put("verdict", "not-confirmed");
			Api.Outcome judged = rehearse(api, about, any);
			if (judged.isDone()) {
				tell(judged.json(), model);
			}
		}
	}

	/** How the figures agree, and whether the sign-off would wait. */
	private static void tell(JsonNode rehearsed, Model model) {
		JsonNode answer = rehearsed.path("answer");
		model.addAttribute("agreement", Plain.list(answer.path("agreement")));
		model.addAttribute("waits", answer.path("waitsForCoordinator").asBoolean());
	}

	private record About(String id, TypedFigures figures, DeskWords words) {
	}

}

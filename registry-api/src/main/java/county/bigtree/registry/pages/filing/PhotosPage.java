package county.bigtree.registry.pages.filing;

import java.io.IOException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.ProblemType;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.Part;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;

import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;

/**
 * The photos of a measurement: sent one by one, or, where scripts run, several at once
 * and made smaller before they are sent. Who sent one takes it back here.
 */
@Controller
@Hidden
class PhotosPage {

	private static final List<String> SHOWS = List.of("whole", "base", "tape", "bark", "leaf", "fruit", "damage",
			"sheet");

	private final FilingWords words;

	PhotosPage(FilingWords words) {
		this.words = words;
	}

	@GetMapping("/measurements/{id}/photos")
	@Access(Who.VOLUNTEER)
	String show(@PathVariable UUID id, Api api, Form form, @ModelAttribute("units") Units units, Actor actor,
			Model model) {
		return page(id, api, form, units, actor, model);
	}

	@PostMapping("/measurements/{id}/photos")
	@Access(Who.VOLUNTEER)
	String send(@PathVariable UUID id, Api api, Form form, @ModelAttribute("units") Units units, Actor actor,
			Model model, HttpServletRequest request, HttpServletResponse response) throws IOException {
		api.get("/measurements/{id}", id);
		if (!hasFile(request)) {
			form.refuse("file", this.words.get("photos.file.missing"));
		}
		if (!SHOWS.contains(form.value("shows"))) {
			form.refuse("shows", this.words.get("photos.shows.missing"));
		}
		if (form.isWrong()) {
			response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
			return page(id, api, form, units, actor, model);
		}
		Api.Outcome outcome = api.post("/measurements/{id}/photos", id).once(form.key()).sendFiles();
		if (outcome.refusal() == null) {
			return "redirect:/measurements/" + id + "/photos?done=sent";
		}
		Refused.take(outcome.refusal(), form, this.words, response, (entry) -> entry);
		return page(id, api, form, units, actor, model);
	}

	@PostMapping("/measurements/{id}/photos/{photo}/withdrawal")
	@Access(Who.VOLUNTEER)
	String withdraw(@PathVariable UUID id, @PathVariable UUID photo, Api api, Form form,
			@ModelAttribute("units") Units units, Actor actor, Model model, HttpServletResponse response) {
		api.get("/measurements/{id}", id);
		Api.Outcome outcome = api.post("/photos/{id}/decisions", photo)
			.on(form.seen())
			.once(form.key())
			.send(JsonNodeFactory.instance.objectNode().put("decision", "withdraw"));
		if (outcome.refusal() == null) {
			return "redirect:/measurements/" + id + "/photos?done=withdrawn";
		}
		Refused.take(outcome.refusal(), form, this.words, response, (entry) -> entry);
		if (outcome.refusal().type() == ProblemType.PRECONDITION_MISSING) {
			response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
		}
		return page(id, api, form, units, actor, model);
	}

	/** The states of those photos that who looks may take back, by their ids. */
	private static Map<String, String> own(JsonNode photos, Api api) {
		Set<String> sent = new HashSet<>();
		api.get("/people/me/photos?limit=500")
			.path("items")
			.forEach((photo) -> sent.add(photo.path("id").asString("")));
		Map<String, String> own = new HashMap<>();
		for (JsonNode photo : photos) {
			String id = photo.path("id").asString("");
			if (sent.contains(id) && !photo.path("status").asString("").equals("withdrawn")) {
				own.put(id, Objects.requireNonNullElse(api.read("/photos/{id}", id).seen(), ""));
			}
		}
		return own;
	}

	private String page(UUID id, Api api, Form form, Units units, Actor actor, Model model) {
		JsonNode measurement = api.get("/measurements/{id}", id);
		AboutTree about = AboutTree.of(api, measurement.path("tree").asString(""), units);
		if (!form.isFilled("takenOn")) {
			form.put("takenOn", measurement.path("measuredOn").asString(""));
		}
		if (!form.isFilled("credit")) {
			form.put("credit", actor.creditName());
		}
		model.addAttribute("measurement", id);
		model.addAttribute("about", about);
		model.addAttribute("practice", about.practice());
		JsonNode photos = api.get("/measurements/{id}/photos", id).path("items");
		model.addAttribute("photos", photos);
		model.addAttribute("own", own(photos, api));
		model.addAttribute("kinds", SHOWS);
		model.addAttribute("done", form.value("done"));
		return "photos";
	}

	private static boolean hasFile(HttpServletRequest request) throws IOException {
		String type = request.getContentType();
		if (type == null || !type.startsWith("multipart/")) {
			return false;
		}
		try {
			@Nullable Part file = request.getPart("file");
			return file != null && file.getSize() > 0;
		}
		catch (ServletException ex) {
			return false;
		}
	}

}

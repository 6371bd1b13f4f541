package county.bigtree.registry.pages.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.Viewer;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.form.Plain;
import county.bigtree.registry.problem.ProblemType;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;

/**
 * The photos that wait to be looked at by a county's verifiers, and those passed, of
 * which a pass can be taken back; the oldest first.
 */
@Controller
@Hidden
class PhotosDesk {

	private static final int SHOWN = 12;

	private static final String PASSED = "passed";

	private final Desks desks;

	PhotosDesk(Desks desks) {
		this.desks = desks;
	}

	@GetMapping("/desk/{county}/photos")
	@Access(Who.VERIFIER)
	String show(@PathVariable String county, Api api, Form form, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units, Model model) {
		this.desks.open(county, units, model);
		String status = form.has("show", PASSED) ? PASSED : "waiting";
		String list = "/counties/{county}/photos?status={status}&limit={limit}";
		JsonNode waiting = form.isFilled("cursor")
				? api.get(list + "&cursor={cursor}", county, status, SHOWN, form.value("cursor"))
				: api.get(list, county, status, SHOWN);
		List<Waiting> photos = new ArrayList<>();
		waiting.path("items").forEach((photo) -> {
			Api.Read read = api.read("/photos/{id}", photo.path("id").asString(""));
			photos.add(new Waiting(Plain.map(photo), read.seen()));
		});
		model.addAttribute("photos", photos);
		model.addAttribute("next", waiting.path("next").asString(""));
		model.addAttribute("show", status);
		model.addAttribute("decides", viewer != null && viewer.coordinates().contains(county));
		return "photos-waiting";
	}

	@PostMapping("/desk/{county}/photos/{photo}")
	@Access(Who.VERIFIER)
	String decide(@PathVariable String county, @PathVariable String photo, Api api, Form form,
			@ModelAttribute("viewer") @Nullable Viewer viewer, @ModelAttribute("units") Units units, Model model,
			HttpServletResponse response) {
		var body = JsonNodeFactory.instance.objectNode();
		form.text(body, "decision").text(body, "text").text(body, "reason");
		Api.Outcome outcome = api.post("/photos/{id}/decisions", photo).on(form.seen()).once(form.key()).send(body);
		if (outcome.refusal() == null) {
			return "redirect:/desk/" + county + "/photos?done=photo" + (form.has("show", PASSED) ? "&show=passed" : "");
		}
		ProblemType type = outcome.refusal().type();
		response.setStatus(((type == ProblemType.PRECONDITION_MISSING) ? ProblemType.INVALID : type).status().value());
		form.refuse(outcome.refusal(), (entry) -> photo + "." + entry);
		model.addAttribute("refused", photo);
		return show(county, api, form, viewer, units, model);
	}

	/**
	 * A photo to be looked at.
	 *
	 * @param seen the state in which it is shown
	 */
	record Waiting(Map<String, @Nullable Object> photo, @Nullable String seen) {
	}

}

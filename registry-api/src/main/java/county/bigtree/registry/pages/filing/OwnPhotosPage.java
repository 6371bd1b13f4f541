package county.bigtree.registry.pages.filing;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.problem.ProblemType;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;

import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;

/**
 * All photos that somebody sent, of filings and of trees alone, with the way to take them
 * back.
 */
@Controller
@Hidden
class OwnPhotosPage {

	private static final int SHOWN = 12;

	private final FilingWords words;

	OwnPhotosPage(FilingWords words) {
		this.words = words;
	}

	@GetMapping("/mine/photos")
	@Access(Who.SIGNED_IN)
	String show(Api api, Form form, Model model) {
		JsonNode page = form.isFilled("cursor")
				? api.get("/people/me/photos?limit={limit}&cursor={cursor}", SHOWN, form.value("cursor"))
				: api.get("/people/me/photos?limit={limit}", SHOWN);
		List<Own> photos = new ArrayList<>();
		page.path("items")
			.forEach((photo) -> photos.add(new Own(photo,
					isWithdrawn(photo) ? null : api.read("/photos/{id}", photo.path("id").asString("")).seen())));
		model.addAttribute("photos", photos);
		model.addAttribute("next", page.path("next").asString(null));
		model.addAttribute("done", form.value("done"));
		return "mine-photos";
	}

	@PostMapping("/mine/photos/{photo}/withdrawal")
	@Access(Who.SIGNED_IN)
	String withdraw(@PathVariable UUID photo, Api api, Form form, Model model, HttpServletResponse response) {
		api.get("/photos/{id}", photo);
		Api.Outcome outcome = api.post("/photos/{id}/decisions", photo)
			.on(form.seen())
			.once(form.key())
			.send(JsonNodeFactory.instance.objectNode().put("decision", "withdraw"));
		if (outcome.refusal() == null) {
			return "redirect:/mine/photos?done=withdrawn";
		}
		Refused.take(outcome.refusal(), form, this.words, response, (entry) -> entry);
		if (outcome.refusal().type() == ProblemType.PRECONDITION_MISSING) {
			response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
		}
		return show(api, form, model);
	}

	private static boolean isWithdrawn(JsonNode photo) {
		return photo.path("status").asString("").equals("withdrawn");
	}

	/**
	 * A photo and the state in which it is shown.
	 *
	 * @param seen null where it is taken back already
	 */
	record Own(JsonNode photo, @Nullable String seen) {
	}

}

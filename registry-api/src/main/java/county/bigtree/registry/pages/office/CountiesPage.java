package county.bigtree.registry.pages.office;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.util.List;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.form.Refusal;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.Part;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * The counties of the service, and founding one: where an administrator begins.
 */
@Controller
@Hidden
class CountiesPage {

	private static final String BOUNDARY = "boundary";

	/** The form has a key of its own. */
	private static final String KEY = "countyKey";

	/** The zones in which there are counties; others can be typed. */
	private static final List<String> ZONES = List.of("America/New_York", "America/Detroit", "America/Chicago",
			"America/Denver", "America/Phoenix", "America/Los_Angeles", "America/Anchorage", "Pacific/Honolulu",
			"America/Indiana/Indianapolis", "America/Kentucky/Louisville", "America/Boise");

	private final JsonMapper json;

	CountiesPage(JsonMapper json) {
		this.json = json;
	}

	@GetMapping("/desk/counties")
	@Access(Who.ADMINISTRATOR)
	String show(Api api, @RequestParam(required = false) @Nullable String done, Model model) {
		model.addAttribute("form", Form.empty().put("timeZone", ""));
		model.addAttribute("done", done);
		return page(api, model);
	}

	@PostMapping("/desk/counties")
	@Access(Who.ADMINISTRATOR)
	String found(Api api, Form form, Model model, HttpServletRequest request, HttpServletResponse response)
			throws IOException {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		body.put("key", form.value(KEY));
		List.of("name", "state", "timeZone", "tagPrefix").forEach((field) -> form.text(body, field));
		form.yesOrNo(body, "practice");
		JsonNode boundary = boundary(form, request);
		if (boundary != null) {
			body.set(BOUNDARY, boundary);
		}
		if (form.isWrong()) {
			response.setStatus(422);
			return page(api, model);
		}
		Api.Outcome outcome = api.post("/counties").once(form.key()).send(body);
		Refusal refusal = outcome.refusal();
		if (refusal != null) {
			form.refuse(refusal, (field) -> field.equals("key") ? KEY : field.startsWith(BOUNDARY) ? BOUNDARY : field);
			response.setStatus(refusal.type().status().value());
			return page(api, model);
		}
		return "redirect:/desk/counties?done=" + form.value(KEY);
	}

	private String page(Api api, Model model) {
		model.addAttribute("counties", api.get("/counties?limit=200").path("items"));
		model.addAttribute("zones", ZONES.stream().filter(ZoneId.getAvailableZoneIds()::contains).toList());
		return "counties";
	}

	/**
	 * From the file, or else from the field: a geometry, or a feature or collection that
	 * holds one.
	 */
	private @Nullable JsonNode boundary(Form form, HttpServletRequest request) throws IOException {
		String text = uploaded(request);
		if (text.isBlank()) {
			text = form.value(BOUNDARY);
		}
		if (text.isBlank()) {
			return null;
		}
		try {
			return geometry(this.json.readTree(text));
		}
		catch (JacksonException ex) {
			form.refuse(BOUNDARY, "This is no GeoJSON: it can't be read as JSON.");
			return null;
		}
	}

	private static JsonNode geometry(JsonNode given) {
		return switch (given.path("type").asString("")) {
			case "Feature" -> given.path("geometry");
			case "FeatureCollection" ->
				(given.path("features").size() == 1) ? given.path("features").path(0).path("geometry") : given;
			default -> given;
		};
	}

	private static String uploaded(HttpServletRequest request) throws IOException {
		String type = request.getContentType();
		if (type == null || !type.startsWith("multipart/")) {
			return "";
		}
		try {
			Part part = request.getPart("boundaryFile");
			return (part != null) ? new String(part.getInputStream().readAllBytes(), StandardCharsets.UTF_8) : "";
		}
		catch (ServletException ex) {
			throw new IOException(ex);
		}
	}

}

package county.bigtree.registry.pages.office;

import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
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
 * One import: how far it is, what became of its rows, and what is decided on it.
 */
@Controller
@RequestMapping("/desk/{county}/imports/{import}")
@Hidden
class ImportPage {

	@GetMapping
	@Access(Who.COORDINATOR)
	String show(@PathVariable String county, @PathVariable("import") UUID id,
			@RequestParam(required = false) @Nullable String done, Api api, Form form, Model model) {
		model.addAttribute("done", done);
		return page(county, id, api, form, model);
	}

	@PostMapping("/names")
	@Access(Who.COORDINATOR)
	String match(@PathVariable String county, @PathVariable("import") UUID id, Api api, Form form, Model model,
			HttpServletResponse response) {
		String species = species(form, api);
		if (species != null) {
			ObjectNode body = JsonNodeFactory.instance.objectNode();
			body.put("name", form.value("name")).put("species", species);
			if (!Answers.refused(api.post("/imports/{import}/unknown-names", id).once(form.key()).send(body), form,
					response)) {
				return at(county, id) + "?done=matched";
			}
		}
		else {
			response.setStatus(422);
		}
		return page(county, id, api, form, model);
	}

	/**
	 * What is typed may be a key or a name; where it is neither the form says which there
	 * are.
	 */
	private static @Nullable String species(Form form, Api api) {
		String typed = form.value("species");
		if (typed.isEmpty()) {
			form.refuse("species", "Say which species it is.");
			return null;
		}
		if (typed.matches("[a-z0-9-]+") && api.find("/species/{species}", typed) != null) {
			return typed;
		}
		JsonNode found = api.get("/species?limit=5&query={query}", typed).path("items");
		String named = StreamSupport.stream(found.spliterator(), false)
			.filter((one) -> typed.equalsIgnoreCase(one.path("scientificName").asString(""))
					|| typed.equalsIgnoreCase(one.path("commonName").asString("")))
			.map((one) -> one.path("key").asString(""))
			.findFirst()
			.orElse("");
		if (!named.isEmpty()) {
			return named;
		}
		form.refuse("species",
				found.isEmpty() ? "No species of the catalogue is called that."
						: "Which of them? " + StreamSupport.stream(found.spliterator(), false)
							.map((one) -> one.path("commonName").asString("") + ": " + one.path("key").asString(""))
							.collect(Collectors.joining("; ")));
		return null;
	}

	@PostMapping("/withdrawal")
	@Access(Who.COORDINATOR)
	String withdraw(@PathVariable String county, @PathVariable("import") UUID id, Api api, Form form, Model model,
			HttpServletResponse response) {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		body.put("reason", form.value("reason"));
		boolean decides = form.has("do", "decide");
		Api.Outcome outcome = decides
				? api.post("/imports/{import}/withdrawal", id).on(form.seen()).once(form.key()).send(body)
				: api.post("/imports/{import}/withdrawal?dryRun=true", id).on(form.seen()).send(body);
		if (!Answers.refused(outcome, form, response)) {
			if (decides) {
				return at(county, id) + "?done=withdrawn";
			}
			model.addAttribute("effects", outcome.json());
		}
		return page(county, id, api, form, model);
	}

	@PostMapping("/untaken")
	@Access(Who.COORDINATOR)
	String erase(@PathVariable String county, @PathVariable("import") UUID id, Api api) {
		Answers.require(api.delete("/imports/{import}/untaken-rows", id).send());
		return at(county, id) + "?done=erased";
	}

	private static String at(String county, UUID id) {
		return "redirect:/desk/" + county + "/imports/" + id;
	}

	private static String page(String county, UUID id, Api api, Form form, Model model) {
		JsonNode found = api.get("/counties/{county}", county);
		Api.Read read = api.read("/imports/{import}", id);
		if (!read.json().path("county").asString("").equals(county)) {
			throw Problem.notFound("No import has this id.");
		}
		String cursor = form.value("cursor");
		boolean busy = !read.json().hasNonNull("finishedAt")
				|| read.json().path("status").asString("").equals("withdrawing");
		model.addAttribute("county", found);
		model.addAttribute("when", When.in(found));
		model.addAttribute("job", read.json());
		model.addAttribute("seen", read.seen());
		model.addAttribute("busy", busy);
		model.addAttribute("refresh", busy ? "3" : null);
		model.addAttribute("names", api.get("/imports/{import}/unknown-names?limit=100", id));
		model.addAttribute("notes", api.get(
				"/imports/{import}/notes?limit=50" + (cursor.isEmpty() ? "{cursor}" : "&cursor={cursor}"), id, cursor));
		String file = form.value("file");
		model.addAttribute("file", file.isEmpty() ? null : api.find("/import-files/{file}", file));
		return "import";
	}

}

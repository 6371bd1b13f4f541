package county.bigtree.registry.pages.office;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.form.Refusal;
import county.bigtree.registry.problem.Problem;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;

/**
 * What the columns of a file mean, said by hand over a guess, and then rehearsed or done.
 * The register keeps the file meanwhile, so that it is chosen once.
 */
@Controller
@RequestMapping("/desk/{county}/imports/files/{file}")
@Hidden
class ImportFilePage {

	private static final String ADDRESS = "/import-files/{file}";

	private final Choices choices;

	ImportFilePage(Choices choices) {
		this.choices = choices;
	}

	@GetMapping
	@Access(Who.COORDINATOR)
	String show(@PathVariable String county, @PathVariable UUID file, Api api, Model model) {
		JsonNode brought = brought(county, file, api);
		JsonNode mapping = brought.hasNonNull("mapping") ? brought.path("mapping") : brought.path("guess");
		Form form = ImportForm.fill(Form.empty(), mapping);
		model.addAttribute("form", form);
		model.addAttribute("guessed", !brought.hasNonNull("mapping"));
		return page(county, brought, form, api, model);
	}

	@PostMapping
	@Access(Who.COORDINATOR)
	String decide(@PathVariable String county, @PathVariable UUID file, Api api, Form form, Model model,
			HttpServletResponse response) {
		JsonNode brought = brought(county, file, api);
		if (form.has("do", "more")) {
			form.put("visits", Integer.toString(Math.min(ImportForm.visits(form) + 1, ImportForm.MOST_VISITS)));
			return page(county, brought, form, api, model);
		}
		ObjectNode mapping = form.has("do", "again") ? (ObjectNode) brought.path("mapping").deepCopy()
				: ImportForm.mapping(form);
		mapping.put("dryRun", form.has("do", "look"));
		if (form.isWrong()) {
			response.setStatus(422);
			return page(county, brought, form, api, model);
		}
		Api.Outcome outcome = api.post(ADDRESS + "/imports", file).once(form.key()).send(mapping);
		Refusal refusal = outcome.refusal();
		if (refusal != null) {
			form.refuse(refusal, ImportForm::field);
			response.setStatus(refusal.type().status().value());
			return page(county, brought, form, api, model);
		}
		String kept = form.has("do", "look") ? "?file=" + file : "";
		return "redirect:/desk/" + county + "/imports/" + outcome.json().path("id").asString("") + kept;
	}

	@PostMapping("/deletion")
	@Access(Who.COORDINATOR)
	String throwAway(@PathVariable String county, @PathVariable UUID file, Api api) {
		Answers.require(api.delete(ADDRESS, file).send());
		return "redirect:/desk/" + county + "/imports?done=thrown";
	}

	private static JsonNode brought(String county, UUID file, Api api) {
		JsonNode brought = api.get(ADDRESS, file);
		if (!brought.path("county").asString("").equals(county)) {
			throw Problem.notFound("No file that waits to be taken in has this id.");
		}
		return brought;
	}

	private String page(String county, JsonNode brought, Form form, Api api, Model model) {
		JsonNode found = api.get("/counties/{county}", county);
		model.addAttribute("county", found);
		model.addAttribute("when", When.in(found));
		model.addAttribute("file", brought);
		model.addAttribute("visits", ImportForm.visits(form));
		model.addAttribute("columns", columns(brought));
		model.addAttribute("lengths", this.choices.of("unit.", List.of("in", "ft", "yd", "cm", "m")));
		model.addAttribute("methods", this.choices.of("imports.method.", List.of("tape", "diameter")));
		model.addAttribute("incompletes", this.choices.of("imports.incomplete.", List.of("keep", "reject")));
		return "import-file";
	}

	/** The columns, each with the first thing that stands in it. */
	private Map<String, String> columns(JsonNode brought) {
		Map<String, String> columns = new LinkedHashMap<>();
		columns.put("", this.choices.words("imports.column.none"));
		int at = 0;
		for (JsonNode column : brought.path("columns")) {
			String name = column.asString("");
			if (!name.isEmpty()) {
				String example = first(brought, at);
				columns.put(name, example.isEmpty() ? name : name + " (" + example + ")");
			}
			at++;
		}
		return columns;
	}

	private static String first(JsonNode brought, int column) {
		for (JsonNode row : brought.path("firstRows")) {
			String cell = row.path("cells").path(column).asString("").strip();
			if (!cell.isEmpty()) {
				return (cell.length() > 24) ? cell.substring(0, 23) + "…" : cell;
			}
		}
		return "";
	}

}

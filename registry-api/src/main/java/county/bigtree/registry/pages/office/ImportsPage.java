package county.bigtree.registry.pages.office;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * The older lists that a county took in, those that wait, and bringing one.
 */
@Controller
@RequestMapping("/desk/{county}/imports")
@Hidden
class ImportsPage {

	@GetMapping
	@Access(Who.COORDINATOR)
	String list(@PathVariable String county, @RequestParam(required = false) @Nullable String done, Api api, Form asked,
			Model model) {
		model.addAttribute("done", done);
		model.addAttribute("form", Form.empty().put("cursor", asked.value("cursor")));
		return page(county, asked.value("cursor"), api, model);
	}

	@PostMapping
	@Access(Who.COORDINATOR)
	String bring(@PathVariable String county, Api api, Form form, Model model, HttpServletRequest request,
			HttpServletResponse response) {
		String type = request.getContentType();
		if (type == null || !type.startsWith("multipart/")) {
			form.refuse("file", "Choose the file first.");
			response.setStatus(422);
			return page(county, "", api, model);
		}
		Api.Outcome outcome = api.post("/counties/{county}/import-files", county).once(form.key()).sendFiles();
		return Answers.refused(outcome, form, response) ? page(county, "", api, model)
				: "redirect:/desk/" + county + "/imports/files/" + outcome.json().path("id").asString("");
	}

	private static String page(String county, String cursor, Api api, Model model) {
		JsonNode found = api.get("/counties/{county}", county);
		String from = cursor.isEmpty() ? "{cursor}" : "&cursor={cursor}";
		model.addAttribute("county", found);
		model.addAttribute("when", When.in(found));
		model.addAttribute("files", api.get("/counties/{county}/import-files", county).path("items"));
		model.addAttribute("imports", api.get("/counties/{county}/imports?limit=30" + from, county, cursor));
		return "imports";
	}

}

package county.bigtree.registry.pages.office;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.form.SpeciesField;
import io.swagger.v3.oas.annotations.Hidden;
import tools.jackson.databind.JsonNode;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/**
 * Every change of a county, who opened what is private, and the records to take along.
 */
@Controller
@Hidden
class JournalPage {

	private final ChangeKinds kinds;

	private final SpeciesField species;

	JournalPage(ChangeKinds kinds, SpeciesField species) {
		this.kinds = kinds;
		this.species = species;
	}

	@GetMapping("/desk/{county}/journal")
	@Access(Who.COORDINATOR)
	String journal(@PathVariable String county, Api api, Form form, Model model) {
		String species = this.species.key(form, "species", form.value("species")).orElse("");
		if (!species.isEmpty()) {
			return "redirect:/api/v1/records?county=" + county + "&species=" + species;
		}
		JsonNode found = api.get("/counties/{county}", county);
		model.addAttribute("county", found);
		model.addAttribute("when", When.in(found));
		model.addAttribute("kinds", this.kinds);
		model
			.addAttribute("journal",
					api.get("/counties/{county}/journal?limit=50" + asked(form, "from") + asked(form, "to")
							+ asked(form, "cursor"), county, form.value("from"), form.value("to"),
							form.value("cursor")));
		return "journal";
	}

	@GetMapping("/desk/{county}/journal/openings")
	@Access(Who.COORDINATOR)
	String openings(@PathVariable String county, Api api, Form form, Model model) {
		JsonNode found = api.get("/counties/{county}", county);
		model.addAttribute("county", found);
		model.addAttribute("when", When.in(found));
		model.addAttribute("openings",
				api.get("/counties/{county}/openings?limit=100" + asked(form, "cursor"), county, form.value("cursor")));
		return "openings";
	}

	/** Variables that are not asked for are left empty, so that each has its place. */
	private static String asked(Form form, String name) {
		return form.isFilled(name) ? "&" + name + "={" + name + "}" : "{" + name + "}";
	}

}

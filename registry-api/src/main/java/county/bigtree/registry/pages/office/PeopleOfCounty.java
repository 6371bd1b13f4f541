package county.bigtree.registry.pages.office;

import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * The people of a county: who holds which role from when to when, and how somebody comes
 * in or goes.
 */
@Controller
@RequestMapping("/desk/{county}/people")
@Hidden
class PeopleOfCounty {

	private final PeopleDesk desk;

	PeopleOfCounty(PeopleDesk desk) {
		this.desk = desk;
	}

	@GetMapping
	@Access(Who.COORDINATOR_OR_ADMINISTRATOR)
	String show(@PathVariable String county, Api api, @RequestParam(required = false) @Nullable String done,
			Model model, Form asked) {
		model.addAttribute("done", done);
		return this.desk.page(county, api,
				Form.empty().put("on", asked.value("on")).put("cursor", asked.value("cursor")), model);
	}

	@PostMapping("/invitations")
	@Access(Who.COORDINATOR_OR_ADMINISTRATOR)
	String invite(@PathVariable String county, Api api, Form form, Model model, HttpServletResponse response) {
		return this.desk.invite(county, api, form, model, response);
	}

	@PostMapping("/roles")
	@Access(Who.COORDINATOR_OR_ADMINISTRATOR)
	String give(@PathVariable String county, Api api, Form form, Model model, HttpServletResponse response) {
		return this.desk.give(county, api, form, model, response);
	}

	@PostMapping("/{person}/roles/{role}/end")
	@Access(Who.COORDINATOR_OR_ADMINISTRATOR)
	String end(@PathVariable String county, @PathVariable UUID person, @PathVariable UUID role, Api api) {
		Answers.require(api.delete("/people/{person}/roles/{role}", person, role).send());
		return "redirect:/desk/" + county + "/people?done=ended";
	}

	@PostMapping("/{person}/password-reset")
	@Access(Who.COORDINATOR_OR_ADMINISTRATOR)
	String reset(@PathVariable String county, @PathVariable UUID person, Api api, Model model) {
		return this.desk.reset(county, person, api, model);
	}

	@PostMapping("/{person}/deactivation")
	@Access(Who.COORDINATOR_OR_ADMINISTRATOR)
	String close(@PathVariable String county, @PathVariable UUID person, Api api) {
		Answers.require(api.post("/people/{person}/deactivation", person).send());
		return "redirect:/desk/" + county + "/people?done=closed";
	}

}

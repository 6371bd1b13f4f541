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
 * All people of the service, for the administrator.
 */
@Controller
@RequestMapping("/desk/people")
@Hidden
class PeopleOfService {

	private final PeopleDesk desk;

	PeopleOfService(PeopleDesk desk) {
		this.desk = desk;
	}

	@GetMapping
	@Access(Who.ADMINISTRATOR)
	String show(Api api, @RequestParam(required = false) @Nullable String done, Model model, Form asked) {
		model.addAttribute("done", done);
		return this.desk.page(null, api,
				Form.empty()
					.put("on", asked.value("on"))
					.put("cursor", asked.value("cursor"))
					.put("county", asked.value("county"))
					.put("role", asked.isFilled("role") ? asked.value("role") : "volunteer"),
				model);
	}

	@PostMapping("/invitations")
	@Access(Who.ADMINISTRATOR)
	String invite(Api api, Form form, Model model, HttpServletResponse response) {
		return this.desk.invite(null, api, form, model, response);
	}

	@PostMapping("/roles")
	@Access(Who.ADMINISTRATOR)
	String give(Api api, Form form, Model model, HttpServletResponse response) {
		return this.desk.give(null, api, form, model, response);
	}

	@PostMapping("/{person}/roles/{role}/end")
	@Access(Who.ADMINISTRATOR)
	String end(@PathVariable UUID person, @PathVariable UUID role, Api api) {
		Answers.require(api.delete("/people/{person}/roles/{role}", person, role).send());
		return "redirect:/desk/people?done=ended";
	}

	@PostMapping("/{person}/password-reset")
	@Access(Who.ADMINISTRATOR)
	String reset(@PathVariable UUID person, Api api, Model model) {
		return this.desk.reset(null, person, api, model);
	}

	@PostMapping("/{person}/deactivation")
	@Access(Who.ADMINISTRATOR)
	String close(@PathVariable UUID person, Api api) {
		Answers.require(api.post("/people/{person}/deactivation", person).send());
		return "redirect:/desk/people?done=closed";
	}

	@PostMapping("/{person}/activation")
	@Access(Who.ADMINISTRATOR)
	String open(@PathVariable UUID person, Api api) {
		Answers.require(api.post("/people/{person}/activation", person).send());
		return "redirect:/desk/people?done=opened";
	}

	@PostMapping("/{person}/erasure")
	@Access(Who.ADMINISTRATOR)
	String erase(@PathVariable UUID person, Api api) {
		Answers.require(api.post("/people/{person}/erasure", person).send());
		return "redirect:/desk/people?done=erased";
	}

}

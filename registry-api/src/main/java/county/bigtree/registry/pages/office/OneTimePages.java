package county.bigtree.registry.pages.office;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;

/**
 * Where one-time codes are put to use: an invitation accepted, a forgotten password
 * chosen anew. A link bears its code behind the {@code #}, which browsers send to nobody:
 * it stands in no log and no referrer. A script puts it into the field; without one it is
 * typed or pasted.
 */
@Controller
@Hidden
class OneTimePages {

	@GetMapping("/invitations")
	@Access(Who.ANYONE)
	String invitation(Model model) {
		model.addAttribute("form", Form.empty());
		return "invitation";
	}

	@PostMapping("/invitations")
	@Access(Who.ANYONE)
	String accept(Api api, Form form, HttpServletRequest request, HttpServletResponse response) {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		body.put("token", form.value("token"));
		body.put("password", AccountPage.typed(request, "password"));
		form.text(body, "creditName");
		return Answers.refused(api.post("/invitations/acceptance").send(body), form, response) ? "invitation"
				: "redirect:/sign-in?done=opened&then=/account";
	}

	@GetMapping("/password-reset")
	@Access(Who.ANYONE)
	String forgotten(Model model) {
		model.addAttribute("form", Form.empty());
		return "password-reset";
	}

	@PostMapping("/password-reset")
	@Access(Who.ANYONE)
	String reset(Api api, Form form, HttpServletRequest request, HttpServletResponse response) {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		body.put("token", form.value("token"));
		body.put("newPassword", AccountPage.typed(request, "newPassword"));
		return Answers.refused(api.post("/people/password-reset").send(body), form, response) ? "password-reset"
				: "redirect:/sign-in?done=reset&then=/account";
	}

}

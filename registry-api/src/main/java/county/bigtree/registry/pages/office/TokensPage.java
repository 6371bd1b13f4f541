package county.bigtree.registry.pages.office;

import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletResponse;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;

/**
 * Access tokens on one's account page: made, shown once, and taken back.
 */
@Controller
@Hidden
class TokensPage {

	private final AccountView view;

	TokensPage(AccountView view) {
		this.view = view;
	}

	@PostMapping("/account/tokens")
	@Access(value = Who.SIGNED_IN, account = true)
	String make(Api api, Form form, Model model, HttpServletResponse response) {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		body.put("name", form.value("tokenName"));
		form.text(body, "expiresOn").text(body, "scope");
		Api.Outcome outcome = api.post("/tokens").send(body);
		if (outcome.refusal() != null) {
			form.refuse(outcome.refusal(), (field) -> field.equals("name") ? "tokenName" : field);
			response.setStatus(outcome.refusal().type().status().value());
			return this.view.page(api, form, model);
		}
		model.addAttribute("token", outcome.json());
		model.addAttribute("when", When.UTC);
		return "account-token";
	}

	@PostMapping("/account/tokens/{token}/revocation")
	@Access(value = Who.SIGNED_IN, account = true)
	String revoke(@PathVariable UUID token, Api api) {
		Answers.require(api.delete("/tokens/{token}", token).send());
		return "redirect:/account?done=revoked";
	}

	@PostMapping("/account/tokens/revocation")
	@Access(value = Who.SIGNED_IN, account = true)
	String revokeAll(Api api) {
		Answers.require(api.delete("/tokens").send());
		return "redirect:/account?done=revoked";
	}

}

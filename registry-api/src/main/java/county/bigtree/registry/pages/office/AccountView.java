package county.bigtree.registry.pages.office;

import java.util.List;

import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import tools.jackson.databind.JsonNode;

import org.springframework.stereotype.Component;
import org.springframework.ui.Model;

/**
 * The page of an account with its several forms. One that is not at hand shows what is on
 * record.
 */
@Component
class AccountView {

	private final Choices choices;

	AccountView(Choices choices) {
		this.choices = choices;
	}

	String page(Api api, Form form, Model model) {
		JsonNode account = api.get("/people/me");
		if (!form.isFilled("creditName") && form.error("creditName") == null) {
			form.put("creditName", account.path("creditName").asString(""));
			form.put("legalName", account.path("legalName").asString(""));
		}
		if (!form.isFilled("scope")) {
			form.put("scope", "file");
		}
		model.addAttribute("account", account);
		model.addAttribute("tokens", api.get("/tokens").path("items"));
		model.addAttribute("notices", api.get("/people/me/notice-settings"));
		model.addAttribute("scopes", this.choices.of("scope.", List.of("read", "file", "all")));
		model.addAttribute("signIns", api.get("/people/me/sign-ins?limit=10").path("items"));
		model.addAttribute("when", When.UTC);
		return "account";
	}

}

package county.bigtree.registry.pages.office;

import java.util.HashMap;
import java.util.Map;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * What is kept of the one who looks: names, password, sign-ins, words, and taking it all
 * away.
 */
@Controller
@Hidden
class AccountPage {

	private final ChangeKinds kinds;

	private final AccountView view;

	AccountPage(ChangeKinds kinds, AccountView view) {
		this.kinds = kinds;
		this.view = view;
	}

	@GetMapping("/account")
	@Access(value = Who.SIGNED_IN, account = true)
	String show(Api api, @RequestParam(required = false) @Nullable String done, Model model) {
		Form form = Form.empty();
		model.addAttribute("form", form);
		model.addAttribute("done", done);
		return this.view.page(api, form, model);
	}

	@PostMapping("/account/names")
	@Access(value = Who.SIGNED_IN, account = true)
	String names(Api api, Form form, Model model, HttpServletResponse response) {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		form.text(body, "creditName");
		body.put("legalName", form.value("legalName"));
		if (!form.isFilled("creditName")) {
			form.refuse("creditName", "Give the name you want to be credited by.");
			response.setStatus(422);
			return this.view.page(api, form, model);
		}
		Api.Outcome outcome = api.patch("/people/me").send(body);
		return Answers.refused(outcome, form, response) ? this.view.page(api, form, model)
				: "redirect:/account?done=names";
	}

	@PostMapping("/account/password")
	@Access(value = Who.SIGNED_IN, account = true)
	String password(Api api, Form form, Model model, HttpServletRequest request, HttpServletResponse response) {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		body.put("presentPassword", typed(request, "presentPassword"));
		body.put("newPassword", typed(request, "newPassword"));
		Api.Outcome outcome = api.put("/people/me/password").send(body);
		return Answers.refused(outcome, form, response) ? this.view.page(api, form, model)
				: "redirect:/account?done=password";
	}

	@PostMapping("/account/notices")
	@Access(value = Who.SIGNED_IN, account = true)
	String notices(Api api, Form form, Model model, HttpServletResponse response) {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		ArrayNode mail = body.putArray("mail");
		form.values("mail").forEach(mail::add);
		Api.Outcome outcome = api.put("/people/me/notice-settings").send(body);
		return Answers.refused(outcome, form, response) ? this.view.page(api, form, model)
				: "redirect:/account?done=notices";
	}

	@GetMapping("/account/words")
	@Access(value = Who.SIGNED_IN, account = true)
	String words(Api api, @RequestParam(required = false) @Nullable String cursor, Model model) {
		model.addAttribute("when", When.UTC);
		model.addAttribute("kinds", this.kinds);
		JsonNode words = (cursor != null) ? api.get("/people/me/words?limit=50&cursor={cursor}", cursor)
				: api.get("/people/me/words?limit=50");
		model.addAttribute("words", words);
		Map<String, String> plainly = new HashMap<>();
		words.path("items")
			.forEach((one) -> plainly.computeIfAbsent(one.path("words").asString(""), KeptWords::plainly));
		model.addAttribute("plainly", plainly);
		return "account-words";
	}

	@GetMapping("/account/erasure")
	@Access(value = Who.SIGNED_IN, account = true)
	String erasure(Api api, Model model) {
		model.addAttribute("form", Form.empty());
		model.addAttribute("account", api.get("/people/me"));
		return "account-erasure";
	}

	@PostMapping("/account/erasure")
	@Access(value = Who.SIGNED_IN, account = true)
	String erase(Api api, Form form, Model model, HttpServletRequest request, HttpServletResponse response) {
		ObjectNode body = JsonNodeFactory.instance.objectNode();
		body.put("presentPassword", typed(request, "presentPassword"));
		if (!form.isFilled("understood")) {
			form.refuse("understood", "Tick the box if you want this: it can't be undone.");
		}
		response.setStatus(422);
		if (form.isWrong() || Answers.refused(api.post("/people/me/erasure").send(body), form, response)) {
			model.addAttribute("account", api.get("/people/me"));
			return "account-erasure";
		}
		return "redirect:/account/erased";
	}

	@GetMapping("/account/erased")
	@Access(Who.ANYONE)
	String erased() {
		return "account-erased";
	}

	/** As it was typed: a password may begin with a space. */
	static String typed(HttpServletRequest request, String name) {
		String value = request.getParameter(name);
		return (value != null) ? value : "";
	}

}

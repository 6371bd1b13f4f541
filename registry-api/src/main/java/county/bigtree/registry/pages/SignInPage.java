package county.bigtree.registry.pages;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.people.Actor;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.node.JsonNodeFactory;

import org.springframework.core.env.Environment;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * Signing in and out. Who was asked to sign in while sending a form gets it back to send
 * it again.
 */
@Controller
@Hidden
class SignInPage {

	/** Configured where people may sign in by a provider. */
	static final String PROVIDER = "registry.openid.issuer";

	private static final String WAITING = "kept.";

	private final Environment environment;

	SignInPage(Environment environment) {
		this.environment = environment;
	}

	@GetMapping("/sign-in")
	@Access(Who.ANYONE)
	String show(@RequestParam(defaultValue = "/") String then, @RequestParam(required = false) @Nullable String done,
			@Nullable Actor actor, Model model) {
		if (actor != null) {
			return "redirect:" + local(then);
		}
		model.addAttribute("then", local(then));
		model.addAttribute("done", done);
		model.addAttribute("provider", this.environment.containsProperty(PROVIDER));
		model.addAttribute("kept", List.of());
		return "sign-in";
	}

	@PostMapping("/sign-in")
	@Access(Who.ANYONE)
	String signIn(Api api, Form form, Model model, HttpServletRequest request, HttpServletResponse response) {
		String then = local(form.value("then"));
		List<RefusalPage.Kept> kept = kept(request);
		model.addAttribute("then", then);
		model.addAttribute("provider", this.environment.containsProperty(PROVIDER));
		model.addAttribute("kept", kept);
		var body = JsonNodeFactory.instance.objectNode();
		body.put("email", form.value("email"));
		body.put("password", request.getParameter("password"));
		Api.Outcome outcome = api.post("/session").send(body);
		if (outcome.refusal() != null) {
			response.setStatus(outcome.refusal().type().status().value());
			form.refuse(outcome.refusal());
			return "sign-in";
		}
		return kept.isEmpty() ? "redirect:" + then : "send-again";
	}

	@PostMapping("/sign-out")
	@Access(value = Who.SIGNED_IN, account = true)
	String signOut(Api api, Form form, HttpServletResponse response) {
		api.delete("/session?everywhere={everywhere}", form.isFilled("everywhere")).send();
		if (form.isFilled("clear")) {
			// Told by the page where nothing waits in this browser, for nobody.
			response.setHeader("Clear-Site-Data", "\"cache\", \"storage\"");
		}
		return "redirect:/";
	}

	private static List<RefusalPage.Kept> kept(HttpServletRequest request) {
		return request.getParameterMap()
			.entrySet()
			.stream()
			.filter((entry) -> entry.getKey().startsWith(WAITING))
			.flatMap((entry) -> Arrays.stream(entry.getValue())
				.map((value) -> new RefusalPage.Kept(entry.getKey().substring(WAITING.length()), value)))
			.toList();
	}

	/** An address of ours; anything else leads home. */
	static String local(String address) {
		boolean ours = address.startsWith("/") && !address.startsWith("//")
				&& Stream.of("\\", "\r", "\n", "\t").noneMatch(address::contains);
		return ours ? address : "/";
	}

}

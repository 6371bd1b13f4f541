package county.bigtree.registry.pages.notice;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Refusal;
import io.swagger.v3.oas.annotations.Hidden;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * The notices that could not be sent, for the administrator.
 */
@Controller
@RequestMapping("/desk/notices")
@Hidden
class StuckNoticesPage {

	@GetMapping
	@Access(Who.ADMINISTRATOR)
	String show(Api api, @RequestParam(defaultValue = "") String done, Model model) {
		model.addAttribute("done", done);
		model.addAttribute("stuck", api.get("/notices/stuck").path("items"));
		model.addAttribute("mailed", api.get("/people/me/notice-settings").path("mailed").asBoolean(false));
		return "notices-stuck";
	}

	@PostMapping("/retry")
	@Access(Who.ADMINISTRATOR)
	String retry(Api api) {
		return done(api.post("/notices/stuck/retry").send(), "retried");
	}

	@PostMapping("/dismissal")
	@Access(Who.ADMINISTRATOR)
	String dismiss(Api api) {
		return done(api.post("/notices/stuck/dismissal").send(), "dismissed");
	}

	private static String done(Api.Outcome outcome, String word) {
		Refusal refusal = outcome.refusal();
		if (refusal != null) {
			throw refusal.asProblem();
		}
		return "redirect:/desk/notices?done=" + word;
	}

}

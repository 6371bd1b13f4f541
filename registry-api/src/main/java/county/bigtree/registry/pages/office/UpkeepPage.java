package county.bigtree.registry.pages.office;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.form.Api;
import io.swagger.v3.oas.annotations.Hidden;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;

/**
 * How the register is kept safe, for the administrator.
 */
@Controller
@Hidden
class UpkeepPage {

	@GetMapping("/desk/upkeep")
	@Access(Who.ADMINISTRATOR)
	String show(Api api, Model model) {
		model.addAttribute("upkeep", api.get("/upkeep"));
		model.addAttribute("mailed", api.get("/people/me/notice-settings").path("mailed").asBoolean(false));
		model.addAttribute("when", When.UTC);
		return "upkeep";
	}

}

package county.bigtree.registry.pages.desk;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.Viewer;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Plain;
import io.swagger.v3.oas.annotations.Hidden;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;

/**
 * A county's open work in one account to print, for who takes the office over.
 */
@Controller
@Hidden
class HandoverPage {

	private final Desks desks;

	HandoverPage(Desks desks) {
		this.desks = desks;
	}

	@GetMapping("/counties/{county}/handover")
	@Access(Who.COORDINATOR)
	String show(@PathVariable String county, Api api, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units, Model model) {
		this.desks.openForCoordinator(county, viewer, units, model);
		model.addAttribute("handover", Plain.map(api.get("/counties/{county}/handover", county)));
		return "handover";
	}

}

package county.bigtree.registry.pages;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import io.swagger.v3.oas.annotations.Hidden;

import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;

/**
 * Pages that say the same whatever the register holds.
 */
@Controller
@Hidden
class PlainPages {

	@GetMapping("/cautions")
	@Access(Who.ANYONE)
	String cautions() {
		return "cautions";
	}

	@GetMapping("/about")
	@Access(Who.ANYONE)
	String about() {
		return "about";
	}

	@GetMapping("/accessibility")
	@Access(Who.ANYONE)
	String accessibility() {
		return "accessibility";
	}

}

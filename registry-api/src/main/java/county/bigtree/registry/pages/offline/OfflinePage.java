package county.bigtree.registry.pages.offline;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import io.swagger.v3.oas.annotations.Hidden;

import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;

/**
 * What can be done where there is no network. The app that a phone installs opens here,
 * and a page that was not kept leads here.
 */
@Controller
@Hidden
class OfflinePage {

	@GetMapping("/offline")
	@Access(Who.ANYONE)
	String show() {
		return "offline";
	}

}

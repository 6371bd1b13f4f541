package county.bigtree.registry.problem.web;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import io.swagger.v3.oas.annotations.Hidden;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/**
 * Explains each type of problem at the address that is its {@code type}.
 */
@Controller
@Hidden
class ProblemPages {

	@GetMapping("/problems")
	@Access(Who.ANYONE)
	String all(Model model) {
		model.addAttribute("types", ProblemType.values());
		return "problems";
	}

	@GetMapping("/problems/{slug}")
	@Access(Who.ANYONE)
	String one(@PathVariable String slug, Model model) {
		ProblemType type = ProblemType.find(slug)
			.orElseThrow(() -> Problem.notFound("There is no such type of problem."));
		model.addAttribute("types", new ProblemType[] { type });
		return "problems";
	}

}

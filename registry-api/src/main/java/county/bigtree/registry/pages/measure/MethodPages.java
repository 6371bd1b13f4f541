package county.bigtree.registry.pages.measure;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import county.bigtree.domain.measuring.Kind;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.Phrases;
import county.bigtree.registry.problem.Problem;
import io.swagger.v3.oas.annotations.Hidden;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/**
 * How girth, height and crown are measured: all methods side by side, and one page for
 * each with its drawing, formula, uncertainty and source.
 */
@Controller
@Hidden
class MethodPages {

	private final Phrases phrases;

	MethodPages(Phrases phrases) {
		this.phrases = phrases;
	}

	@GetMapping("/methods")
	@Access(Who.ANYONE)
	String methods(Model model) {
		Map<String, List<MethodSheet>> figures = new LinkedHashMap<>();
		figures.put("girth", MethodSheet.of(Kind.GIRTH));
		figures.put("height", MethodSheet.of(Kind.HEIGHT));
		figures.put("crown", MethodSheet.of(Kind.CROWN));
		model.addAttribute("figures", figures);
		return "methods";
	}

	@GetMapping("/methods/{method}")
	@Access(Who.ANYONE)
	String method(@PathVariable String method, Model model) {
		model.addAttribute("sheet",
				MethodSheet.find(method).orElseThrow(() -> Problem.notFound("No method has this name.")));
		model.addAttribute("phrases", this.phrases);
		return "method";
	}

}

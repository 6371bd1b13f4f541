package county.bigtree.registry.pages.measure;

import java.util.Map;

import county.bigtree.domain.measuring.Readings;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.Units;
import io.swagger.v3.oas.annotations.Hidden;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

/**
 * What figures typed so far come to, as a part of a page: fetched by its script while
 * they are typed.
 */
@Controller
@Hidden
class WorkedFigures {

	@GetMapping("/measure/worked")
	@Access(Who.ANYONE)
	ModelAndView worked(@RequestParam Map<String, String> parameters, @ModelAttribute("units") Units units,
			Model model) {
		TypedFigures.of(parameters, units).show(model);
		return new ModelAndView("fragments/readings :: worked");
	}

}

package county.bigtree.registry.pages.filing;

import county.bigtree.domain.measuring.Readings;
import county.bigtree.registry.pages.measure.TypedFigures;

import org.springframework.ui.Model;

/**
 * Puts what was typed of the figures, and what it comes to, into a page.
 */
final class Figures {

	private Figures() {
	}

	static void show(TypedFigures figures, Model model) {
		model.addAttribute("figures", figures);
		Readings readings = figures.readings();
		if (readings != null) {
			model.addAttribute("working", readings.working());
			model.addAttribute("cautions", readings.cautions());
			figures.score().ifPresent((score) -> model.addAttribute("score", score));
		}
	}

}

package county.bigtree.registry.pages.desk;

import java.util.Map;
import java.util.Objects;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.Viewer;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.HandlerMapping;

/**
 * The pages on which a coordinator decides on what others filed or signed off: each
 * address with the page that it shows and with who asks there. Shown by GET, looked ahead
 * at or decided by POST.
 */
@Controller
@Hidden
class DecisionPages {

	private static final String NOMINATION = "/desk/{county}/nominations/{id}";

	private static final String MEASUREMENT = "/desk/{county}/measurements/{id}";

	private static final String REPORT = "/condition-reports/{id}/decision";

	private static final String RELOCATION = "/relocations/{id}/decision";

	private static final String ASSENT = "/sign-offs/{id}/assent";

	private static final String REVOCATION = "/sign-offs/{id}/revocation";

	private static final String SETTING_ASIDE = "/measurements/{id}/setting-aside";

	private final Deciding deciding;

	private final Map<String, Line> lines;

	DecisionPages(Deciding deciding, AskAboutCase cases, AskAboutReport reports, AskAboutSignOff signOffs) {
		this.deciding = deciding;
		this.lines = Map.of(NOMINATION, new Line("case", cases::askOfNomination), MEASUREMENT,
				new Line("case", cases::askOfMeasurement), REPORT, decision(reports::askOfReport), RELOCATION,
				decision(reports::askOfRelocation), ASSENT, decision(signOffs::askForAssent), REVOCATION,
				decision(signOffs::askToRevoke), SETTING_ASIDE, decision(signOffs::askToSetAside));
	}

	private static Line decision(AskAbout asks) {
		return new Line("decision", (county, id, asking) -> asks.ask(id, asking));
	}

	@GetMapping({ NOMINATION, MEASUREMENT, REPORT, RELOCATION, ASSENT, REVOCATION, SETTING_ASIDE })
	@Access(Who.COORDINATOR)
	String show(@PathVariable Map<String, String> about, HttpServletRequest request, Api api, Form form,
			@ModelAttribute("viewer") @Nullable Viewer viewer, @ModelAttribute("units") Units units, Model model) {
		Line line = line(request);
		this.deciding.show(line.ask(about, new Asking(api, viewer, units, model)), form, model);
		return line.view();
	}

	@PostMapping({ NOMINATION, MEASUREMENT, REPORT, RELOCATION, ASSENT, REVOCATION, SETTING_ASIDE })
	@Access(Who.COORDINATOR)
	String decide(@PathVariable Map<String, String> about, HttpServletRequest request, Api api, Form form,
			@ModelAttribute("viewer") @Nullable Viewer viewer, @ModelAttribute("units") Units units, Model model,
			HttpServletResponse response) {
		Line line = line(request);
		Asked asked = line.ask(about, new Asking(api, viewer, units, model));
		return this.deciding.decide(asked, line.view(), api, form, model, response, (done) -> asked.then());
	}

	private Line line(HttpServletRequest request) {
		Object address = request.getAttribute(HandlerMapping.BEST_MATCHING_PATTERN_ATTRIBUTE);
		return Objects.requireNonNull(this.lines.get(String.valueOf(address)), "A page of no decision");
	}

	/** Reads what it is about and asks for the decision, at the desk of a county. */
	private interface AskAtDesk {

		Asked ask(String county, String id, Asking asking);

	}

	/** The same, wherever it stands. */
	private interface AskAbout {

		Asked ask(String id, Asking asking);

	}

	/**
	 * An address.
	 *
	 * @param view what it shows
	 */
	private record Line(String view, AskAtDesk asks) {

		Asked ask(Map<String, String> about, Asking asking) {
			return this.asks.ask(about.getOrDefault("county", ""), about.getOrDefault("id", ""), asking);
		}

	}

}

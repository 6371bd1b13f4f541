package county.bigtree.registry.pages.desk;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.notice.StuckNotices;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.Viewer;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.form.Plain;
import io.swagger.v3.oas.annotations.Hidden;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * A county's desk: what waits, by weight and age, what is due, and what may be one tree
 * twice.
 */
@Controller
@Hidden
class DeskPage {

	private static final int SHOWN = 50;

	/** So many of the queue are looked at at once; from there a link leads on. */
	private static final int PART = 500;

	private static final List<String> KINDS = List.of("nomination", "measurement", "sign-off", "condition-report",
			"not-found", "relocation", "photo", "letter");

	private final Desks desks;

	private final StuckNotices mails;

	DeskPage(Desks desks, StuckNotices mails) {
		this.desks = desks;
		this.mails = mails;
	}

	@GetMapping("/desk")
	@Access(Who.COORDINATOR_OR_ADMINISTRATOR)
	String choose(Api api, @ModelAttribute("viewer") @Nullable Viewer viewer, Model model) {
		List<String> counties = (viewer != null) ? viewer.coordinates() : List.of();
		if (counties.size() == 1 && viewer != null && !viewer.administers()) {
			return "redirect:/desk/" + counties.get(0);
		}
		model.addAttribute("counties", counties.stream().map(this.desks::find).toList());
		model.addAttribute("troubles",
				(viewer != null && viewer.administers()) ? api.get("/upkeep").path("troubles").size() : 0);
		return "desks";
	}

	@GetMapping("/desk/{county}")
	@Access(Who.COORDINATOR)
	String queue(@PathVariable String county, @RequestParam(defaultValue = "") String kind,
			@RequestParam(defaultValue = "1") int page, @RequestParam(defaultValue = "") String from, Api api,
			@ModelAttribute("viewer") @Nullable Viewer viewer, @ModelAttribute("units") Units units, Model model) {
		DeskWords words = this.desks.openForCoordinator(county, viewer, units, model);
		JsonNode queue = from.isEmpty() ? api.get("/counties/{county}/queue?limit={limit}", county, PART)
				: api.get("/counties/{county}/queue?limit={limit}&cursor={cursor}", county, PART, from);
		List<Map<String, @Nullable Object>> waiting = Plain.list(queue);
		List<Map<String, @Nullable Object>> shown = waiting.stream()
			.filter((one) -> !KINDS.contains(kind) || kind.equals(one.get("kind")))
			.toList();
		int first = (int) Math.min(Math.max(0L, page - 1L) * SHOWN, shown.size());
		List<Map<String, @Nullable Object>> here = shown.subList(first, Math.min(first + SHOWN, shown.size()));
		words.know(here);
		model.addAttribute("kind", KINDS.contains(kind) ? kind : "");
		model.addAttribute("kinds", counted(waiting));
		model.addAttribute("total", shown.size());
		model.addAttribute("part", waiting.size());
		model.addAttribute("from", from.isEmpty() ? null : from);
		model.addAttribute("further", queue.path("next").asString(null));
		model.addAttribute("page", first / SHOWN + 1);
		model.addAttribute("last", Math.max(1, (shown.size() + SHOWN - 1) / SHOWN));
		model.addAttribute("waiting", here);
		model.addAttribute("due", api.get("/counties/{county}/due?limit=500", county).path("items").size());
		model.addAttribute("visits",
				api.get("/visits?county={county}&open=true&limit=500", county).path("items").size());
		model.addAttribute("duplicates", api.get("/counties/{county}/likely-duplicates", county).path("items").size());
		model.addAttribute("mailsStuck", this.mails.any());
		return "desk";
	}

	/** Leads to the decisions at a tree of this tag. */
	@GetMapping("/desk/{county}/tree")
	@Access(Who.COORDINATOR)
	String tree(@PathVariable String county, @RequestParam(defaultValue = "") String tag) {
		return tag.matches("[A-Za-z0-9-]{1,40}") ? "redirect:/trees/" + tag + "/decisions" : "redirect:/desk/" + county;
	}

	private static Map<String, Integer> counted(List<Map<String, @Nullable Object>> waiting) {
		Map<String, Integer> counted = new LinkedHashMap<>();
		KINDS.forEach((kind) -> counted.put(kind,
				Math.toIntExact(waiting.stream().filter((one) -> kind.equals(one.get("kind"))).count())));
		return counted;
	}

	@GetMapping("/desk/{county}/due")
	@Access(Who.COORDINATOR)
	String due(@PathVariable String county, @RequestParam(defaultValue = "") String cursor, Api api, Form form,
			@ModelAttribute("viewer") @Nullable Viewer viewer, @ModelAttribute("units") Units units, Model model) {
		DeskWords words = this.desks.openForCoordinator(county, viewer, units, model);
		if (!form.isFilled("before")) {
			form.put("before", words.today().plusYears(1).toString());
		}
		JsonNode due = cursor.isEmpty()
				? api.get("/counties/{county}/due?limit={limit}&before={before}", county, SHOWN, form.value("before"))
				: api.get("/counties/{county}/due?limit={limit}&before={before}&cursor={cursor}", county, SHOWN,
						form.value("before"), cursor);
		list("due", due, words, model);
		return "due";
	}

	@GetMapping("/desk/{county}/duplicates")
	@Access(Who.COORDINATOR)
	String duplicates(@PathVariable String county, Api api, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units, Model model) {
		this.desks.openForCoordinator(county, viewer, units, model);
		model.addAttribute("duplicates", Plain.list(api.get("/counties/{county}/likely-duplicates", county)));
		return "duplicates";
	}

	@GetMapping("/desk/{county}/reports")
	@Access(Who.COORDINATOR)
	String reports(@PathVariable String county, @RequestParam(defaultValue = "") String cursor, Api api, Form form,
			@ModelAttribute("viewer") @Nullable Viewer viewer, @ModelAttribute("units") Units units, Model model) {
		DeskWords words = this.desks.openForCoordinator(county, viewer, units, model);
		String address = "/counties/{county}/condition-reports?status=waiting&limit={limit}";
		JsonNode reports = cursor.isEmpty() ? api.get(address, county, SHOWN)
				: api.get(address + "&cursor={cursor}", county, SHOWN, cursor);
		list("reports", reports, words, model);
		return "reports";
	}

	/** Puts a page of a list on the page, with what leads to the rest of it. */
	private static void list(String name, JsonNode page, DeskWords words, Model model) {
		List<Map<String, @Nullable Object>> list = Plain.list(page);
		words.know(list);
		model.addAttribute(name, list);
		model.addAttribute("next", page.path("next"));
	}

	@GetMapping("/desk/{county}/relocations")
	@Access(Who.COORDINATOR)
	String relocations(@PathVariable String county, Api api, Form form,
			@ModelAttribute("viewer") @Nullable Viewer viewer, @ModelAttribute("units") Units units, Model model) {
		this.desks.openForCoordinator(county, viewer, units, model);
		model.addAttribute("relocations", Plain.list(api.get("/counties/{county}/relocations", county)));
		model.addAttribute("coordinates", (viewer != null) ? viewer.coordinates() : List.of());
		return "relocations";
	}

}

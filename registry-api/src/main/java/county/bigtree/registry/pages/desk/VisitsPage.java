package county.bigtree.registry.pages.desk;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.Viewer;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.form.Plain;
import county.bigtree.registry.pages.picture.WalkPicture;
import io.swagger.v3.oas.annotations.Hidden;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;

/**
 * The visits to be made: by when they are due, or in walking order on a map.
 */
@Controller
@Hidden
class VisitsPage {

	private final Desks desks;

	VisitsPage(Desks desks) {
		this.desks = desks;
	}

	@GetMapping("/visits")
	@Access(Who.VERIFIER)
	String visits(Api api, Form form, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units, Model model) {
		String county = form.value("county");
		boolean all = viewer != null && viewer.coordinates().contains(county);
		DeskWords words = all ? this.desks.openForCoordinator(county, viewer, units, model)
				: this.desks.wordsOf(ZoneOffset.UTC, units, model);
		List<Map<String, @Nullable Object>> visits = new ArrayList<>(
				Plain.list(all ? api.get("/visits?open=true&limit=500&county={county}", county)
						: api.get("/visits?open=true&limit=500&mine=true")));
		visits.sort(Comparator.comparing(VisitsPage::due));
		if (form.has("order", "walk")) {
			JsonNode round = api.find(
					"/visits/round?mine={mine}&due={due}&from={from}" + (all ? "&county={county}" : ""), !all,
					all && form.isFilled("due"), form.value("from"), county);
			if (round == null) {
				form.refuse("from", words.say("visits.from.wrong"));
			}
			else {
				walk(visits, round, words, model);
			}
		}
		model.addAttribute("visits", visits);
		model.addAttribute("all", all);
		if (!all) {
			model.addAttribute("unplanned",
					Plain.list(api.get("/assignments?limit=500"))
						.stream()
						.filter((assigned) -> assigned.get("visit") == null)
						.toList());
			model.addAttribute("photos",
					(viewer != null) ? viewer.verified().stream().map(this.desks::find).toList() : List.of());
		}
		model.addAttribute("others",
				(viewer != null) ? viewer.coordinates().stream().map(this.desks::find).toList() : List.of());
		return "visits";
	}

	/** What has no day comes last. */
	private static String due(Map<String, @Nullable Object> visit) {
		return Objects.toString(visit.get("arrangedOn"), Objects.toString(visit.get("byWhen"), "9999"))
				+ visit.get("id");
	}

	/** Puts those of which the place may be read in order, and the others after them. */
	private static void walk(List<Map<String, @Nullable Object>> visits, JsonNode round, DeskWords words, Model model) {
		Map<String, Map<String, @Nullable Object>> left = new LinkedHashMap<>();
		visits.forEach((visit) -> left.put(String.valueOf(visit.get("id")), visit));
		visits.clear();
		round.path("stops").forEach((stop) -> visits.addAll(at(stop, left, words)));
		visits.addAll(left.values());
		model.addAttribute("length", words.distance(round.path("metres").asDouble()));
		List<WalkPicture.Place> places = new ArrayList<>();
		round.path("stops")
			.forEach((stop) -> places.add(new WalkPicture.Place(stop.path("tag").asString(""),
					stop.at("/place/latitude").asDouble(), stop.at("/place/longitude").asDouble())));
		if (!places.isEmpty()) {
			model.addAttribute("picture", WalkPicture.of(places));
		}
	}

	/**
	 * What there is to do at a stop: its visits, filings to sign off, or that it is due.
	 */
	private static List<Map<String, @Nullable Object>> at(JsonNode stop,
			Map<String, Map<String, @Nullable Object>> visits, DeskWords words) {
		List<Map<String, @Nullable Object>> here = new ArrayList<>();
		stop.path("visits").forEach((task) -> {
			Map<String, @Nullable Object> visit = visits.remove(task.path("visit").asString(""));
			if (visit != null) {
				here.add(visit);
			}
		});
		Map<String, @Nullable Object> plain = Plain.map(stop);
		if (here.isEmpty()) {
			here.add(plain);
		}
		Map<String, @Nullable Object> first = here.get(0);
		first.put("due", plain.get("due"));
		first.put("filings", plain.get("filings"));
		first.put("leg", words.distance(stop.path("metresFromLast").asDouble()));
		here.forEach((one) -> one.put("place", plain.get("place")));
		return here;
	}

}

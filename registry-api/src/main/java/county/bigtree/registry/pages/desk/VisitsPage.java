package county.bigtree.registry.pages.desk;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

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

	private static final Pattern PLACE = Pattern.compile("(-?\\d{1,2}(?:\\.\\d+)?)[,;\\s]+(-?\\d{1,3}(?:\\.\\d+)?)");

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
		if (form.has("order", "walk") && !visits.isEmpty()) {
			walk(visits, api, form, words, model);
		}
		model.addAttribute("visits", visits);
		model.addAttribute("all", all);
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
	private static void walk(List<Map<String, @Nullable Object>> visits, Api api, Form form, DeskWords words,
			Model model) {
		Map<String, Map<String, @Nullable Object>> byId = new LinkedHashMap<>();
		List<Walk.Place> places = new ArrayList<>();
		for (Map<String, @Nullable Object> visit : visits) {
			String id = String.valueOf(visit.get("id"));
			byId.put(id, visit);
			JsonNode place = api.find("/trees/{tree}/place", String.valueOf(visit.get("tree")));
			if (place != null) {
				places.add(new Walk.Place(id, String.valueOf(visit.get("tag")), place.path("latitude").asDouble(),
						place.path("longitude").asDouble()));
				visit.put("place", Plain.map(place));
			}
		}
		Walk walk = Walk.of(places, start(form, words));
		visits.clear();
		walk.stops().forEach((stop) -> {
			Map<String, @Nullable Object> visit = Objects.requireNonNull(byId.remove(stop.place().visit()));
			visit.put("leg", (stop.leg() > 0) ? words.distance(stop.leg()) : null);
			visits.add(visit);
		});
		visits.addAll(byId.values());
		model.addAttribute("length", words.distance(walk.metres()));
		if (!walk.stops().isEmpty()) {
			model.addAttribute("picture",
					WalkPicture.of(walk.stops()
						.stream()
						.map((stop) -> new WalkPicture.Place(stop.place().tag(), stop.place().latitude(),
								stop.place().longitude()))
						.toList()));
		}
	}

	private static Walk.@Nullable Place start(Form form, DeskWords words) {
		if (!form.isFilled("from")) {
			return null;
		}
		Matcher place = PLACE.matcher(form.value("from"));
		if (place.matches()) {
			double latitude = Double.parseDouble(place.group(1));
			double longitude = Double.parseDouble(place.group(2));
			if (Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180) {
				return new Walk.Place("", "", latitude, longitude);
			}
		}
		form.refuse("from", words.say("visits.from.wrong"));
		return null;
	}

}

package county.bigtree.registry.pages.desk;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.Viewer;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.paper.PaperSize;
import county.bigtree.registry.paper.PrintPaper;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import io.swagger.v3.oas.annotations.Hidden;
import org.jspecify.annotations.Nullable;

import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.ui.ExtendedModelMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/**
 * The packets of visits to take along: of one, or of all in the order of the list, each
 * on a sheet of its own. They hold what the pages show to the same person.
 */
@RestController
@Hidden
class PacketController {

	/** What can be carried, and read at once. */
	private static final int MOST = 40;

	private final VisitsPage list;

	private final VisitPage packets;

	private final Desks desks;

	private final PrintPaper printing;

	PacketController(VisitsPage list, VisitPage packets, Desks desks, PrintPaper printing) {
		this.list = list;
		this.packets = packets;
		this.desks = desks;
		this.printing = printing;
	}

	@GetMapping(path = "/visits.pdf", produces = MediaType.APPLICATION_PDF_VALUE)
	@Access(Who.VERIFIER)
	ResponseEntity<byte[]> all(Api api, Form form, @ModelAttribute("viewer") @Nullable Viewer viewer,
			@ModelAttribute("units") Units units) {
		PaperSize size = PaperSize.of(form.value("paper"));
		ExtendedModelMap listed = new ExtendedModelMap();
		this.list.visits(api, form, viewer, units, listed);
		if (form.isWrong()) {
			throw Problem.of(ProblemType.INVALID_PARAMETER, Objects.requireNonNull(form.error("from")))
				.with("parameter", "from");
		}
		DeskWords words = (DeskWords) Objects.requireNonNull(listed.get("words"));
		List<Map<String, @Nullable Object>> stops = new ArrayList<>();
		List<?> visits = (List<?>) Objects.requireNonNull(listed.get("visits"));
		for (Object one : visits.subList(0, Math.min(MOST, visits.size()))) {
			stops.add(stop((Map<?, ?>) one, api, units));
		}
		Map<String, @Nullable Object> model = model(words, stops);
		model.put("left", visits.size() - stops.size());
		model.put("length", listed.get("length"));
		return this.printing.forOne("packet", model, size, "visits");
	}

	@GetMapping(path = "/visits/{id}/packet.pdf", produces = MediaType.APPLICATION_PDF_VALUE)
	@Access(Who.VERIFIER_OR_GUEST)
	ResponseEntity<byte[]> one(@PathVariable String id, Api api, Form form, @ModelAttribute("units") Units units) {
		PaperSize size = PaperSize.of(form.value("paper"));
		Map<String, @Nullable Object> stop = packet(id, api, units);
		DeskWords words = (DeskWords) Objects.requireNonNull(stop.get("words"));
		AtTree at = (AtTree) Objects.requireNonNull(stop.get("at"));
		return this.printing.forOne("packet", model(words, List.of(stop)), size, at.tag() + "-visit");
	}

	private static Map<String, @Nullable Object> model(DeskWords words, List<Map<String, @Nullable Object>> stops) {
		Map<String, @Nullable Object> model = new HashMap<>();
		model.put("title", (stops.size() == 1 && stops.get(0).get("at") instanceof AtTree at)
				? words.say("visit.title", at.tag()) : words.say("paper.packet.title"));
		model.put("foot", words.say("paper.packet.foot"));
		model.put("stops", stops);
		model.put("left", 0);
		model.put("length", null);
		return model;
	}

	/** A visit, or a tree on the way with a filing to sign off or that is due. */
	private Map<String, @Nullable Object> stop(Map<?, ?> listed, Api api, Units units) {
		Map<String, @Nullable Object> stop = (listed.get("id") instanceof String id) ? packet(id, api, units)
				: without(String.valueOf(listed.get("tag")), api, units);
		stop.put("leg", listed.get("leg"));
		stop.put("due", listed.get("due"));
		stop.put("purpose",
				(listed.get("filings") instanceof List<?> filings && !filings.isEmpty()) ? "sign-off" : "remeasure");
		return stop;
	}

	private Map<String, @Nullable Object> packet(String visit, Api api, Units units) {
		ExtendedModelMap model = new ExtendedModelMap();
		this.packets.packet(visit, api, Form.empty(), units, model);
		return new HashMap<>(model);
	}

	/** The packet of a tree for which no visit is planned. */
	private Map<String, @Nullable Object> without(String tag, Api api, Units units) {
		ExtendedModelMap model = new ExtendedModelMap();
		AtTree at = AtTree.read(api, tag);
		this.desks.open(at.county(), units, model);
		Map<String, @Nullable Object> stop = new HashMap<>(model);
		stop.put("at", at);
		stop.put("place", VisitPage.place(api, at));
		stop.put("measurements", VisitPage.measurements(api, at));
		return stop;
	}

}

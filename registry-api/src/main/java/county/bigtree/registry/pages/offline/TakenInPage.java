package county.bigtree.registry.pages.offline;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.desk.Desks;
import county.bigtree.registry.pages.form.Form;
import county.bigtree.registry.pages.measure.TypedFigures;
import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.Part;
import org.jspecify.annotations.Nullable;

import org.springframework.context.MessageSource;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;

/**
 * Filings that a phone saved as a file, taken in by a coordinator: shown here, looked
 * over and filed in the form in which they were filled in. Nothing is kept of the file.
 */
@Controller
@RequestMapping("/desk/{county}/taken-in")
@Hidden
class TakenInPage {

	private final Desks desks;

	private final MessageSource messages;

	TakenInPage(Desks desks, MessageSource messages) {
		this.desks = desks;
		this.messages = messages;
	}

	@GetMapping
	@Access(Who.COORDINATOR)
	String show(@PathVariable String county, Form form, @ModelAttribute("units") Units units, Model model) {
		this.desks.open(county, units, model);
		model.addAttribute("filings", List.of());
		return "taken-in";
	}

	@PostMapping
	@Access(Who.COORDINATOR)
	String look(@PathVariable String county, Form form, @ModelAttribute("units") Units units, Model model,
			HttpServletRequest request, HttpServletResponse response) throws IOException {
		this.desks.open(county, units, model);
		Optional<SavedFilings> saved = SavedFilings.read(file(request));
		if (saved.isEmpty()) {
			form.refuse("file", say("taken-in.file.wrong"));
			response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
		}
		model.addAttribute("filings",
				saved.map(SavedFilings::filings)
					.orElse(List.of())
					.stream()
					.map((filing) -> shown(filing, units))
					.toList());
		return "taken-in";
	}

	private String say(String key) {
		return this.messages.getMessage(key, null, java.util.Locale.US);
	}

	/** What the file says as people read it, and the form that takes it on. */
	private Map<String, @Nullable Object> shown(SavedFilings.Filing filing, Units units) {
		Map<String, String> typed = filing.byName();
		Map<String, String> facts = new LinkedHashMap<>();
		for (String field : List.of("county", "speciesName", "tree", "location.latitude", "location.longitude",
				"locality", "condition", "measuredOn", "measuredBy", "observedOn", "remarks")) {
			String value = typed.getOrDefault(field, "");
			if (!value.isBlank()) {
				facts.put(field, value);
			}
		}
		TypedFigures figures = TypedFigures.of(typed, units);
		TypedFigures.NAMES.forEach((name) -> {
			String figure = figures.shown(name, units);
			if (figure != null) {
				facts.put(name, figure);
			}
		});
		Map<String, @Nullable Object> shown = new LinkedHashMap<>();
		shown.put("filing", Map.of("title", filing.title(), "name", filing.name(), "madeAt", filing.madeAt(), "id",
				filing.id(), "address", filing.address()));
		shown.put("facts", facts);
		shown.put("way", !filing.isForm() ? "none" : filing.isReport() ? "report" : "form");
		shown.put("nomination", filing.address().equals("/nominate"));
		shown.put("entries", entries(filing));
		shown.put("photos", filing.photos().stream().map(TakenInPage::photo).toList());
		return shown;
	}

	private static List<Map<String, String>> entries(SavedFilings.Filing filing) {
		List<Map<String, String>> entries = new ArrayList<>();
		filing.entries()
			.stream()
			.filter((entry) -> !entry.name().equals("filedFor.name"))
			.forEach((entry) -> entries.add(Map.of("name", entry.name(), "value", entry.value())));
		return entries;
	}

	private static Map<String, String> photo(SavedFilings.Photo photo) {
		return Map.of("key", photo.key(), "name", photo.name(), "shows", photo.shows(), "text", photo.text(), "takenOn",
				photo.takenOn(), "credit", photo.credit(), "address", photo.address());
	}

	private static byte[] file(HttpServletRequest request) throws IOException {
		String type = request.getContentType();
		if (type == null || !type.startsWith("multipart/")) {
			return new byte[0];
		}
		try {
			@Nullable Part file = request.getPart("file");
			if (file == null) {
				return new byte[0];
			}
			try (InputStream in = file.getInputStream()) {
				return in.readAllBytes();
			}
		}
		catch (ServletException ex) {
			return new byte[0];
		}
	}

}

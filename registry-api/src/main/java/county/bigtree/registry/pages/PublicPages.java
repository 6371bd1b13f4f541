package county.bigtree.registry.pages;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

import county.bigtree.domain.place.Showing;
import county.bigtree.domain.points.Comparison;
import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.lookup.ReadScores;
import county.bigtree.registry.lookup.ReadTrees;
import county.bigtree.registry.lookup.TreeSummary;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.species.SpeciesCatalogue;
import county.bigtree.registry.standing.BookKey;
import county.bigtree.registry.standing.CatchUp;
import county.bigtree.registry.standing.ReadStanding;
import county.bigtree.registry.standing.ReadTitles;
import county.bigtree.registry.standing.StandingQuestion;
import io.swagger.v3.oas.annotations.Hidden;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/**
 * The public pages: counties, a county's standings, a species' ranking with its titles, a
 * tree with its score history.
 */
@Controller
@Hidden
class PublicPages {

	private static final int SHOWN = 100;

	private final CountyPages counties;

	private final Readers readers;

	private final SpeciesCatalogue species;

	PublicPages(CountyPages counties, Readers readers, SpeciesCatalogue species) {
		this.counties = counties;
		this.readers = readers;
		this.species = species;
	}

	@GetMapping("/")
	@Access(Who.ANYONE)
	String home(Model model) {
		model.addAttribute("counties", this.counties.list());
		return "home";
	}

	@GetMapping("/cautions")
	@Access(Who.ANYONE)
	String cautions() {
		return "cautions";
	}

	@GetMapping("/counties/{county}")
	@Access(Who.ANYONE)
	String county(@PathVariable String county, Model model) {
		model.addAttribute("county", county(county));
		this.readers.catchUp().county(county);
		model.addAttribute("species", this.counties.species(county));
		return "county";
	}

	@GetMapping("/counties/{county}/species/{species}")
	@Access(Who.ANYONE)
	String species(@PathVariable String county, @PathVariable String species, Model model) {
		CountyPages.CountyLine line = county(county);
		BookKey book = new BookKey(county, species);
		model.addAttribute("county", line);
		model.addAttribute("species",
				this.species.find(species).orElseThrow(() -> Problem.notFound("No species has this key.")));
		this.readers.catchUp().county(county);
		model.addAttribute("standing",
				this.readers.standing().read(book, new StandingQuestion(null, null, null, SHOWN)));
		model.addAttribute("titles", this.readers.titles().of(book, 0, SHOWN));
		model.addAttribute("unlisted", Showing.UNLISTED);
		model.addAttribute("words", new Words(ZoneId.of(line.timeZone())));
		return "species";
	}

	@GetMapping("/trees/{tree}")
	@Access(Who.ANYONE)
	String tree(@PathVariable String tree, Model model) {
		TreeSummary found = find(tree);
		this.readers.catchUp().county(found.county());
		TreeSummary present = find(tree);
		model.addAttribute("tree", present);
		CountyPages.CountyLine line = county(present.county());
		model.addAttribute("county", line);
		model.addAttribute("species", this.species.get(present.species()));
		model.addAttribute("scores", this.readers.scores().of(present.id()));
		model.addAttribute("words", new Words(ZoneId.of(line.timeZone())));
		return "tree";
	}

	@GetMapping("/t/{tag}")
	@Access(Who.ANYONE)
	String byTag(@PathVariable String tag) {
		return "redirect:/trees/" + find(tag).tag();
	}

	private TreeSummary find(String tree) {
		return this.readers.trees()
			.find(tree, null)
			.orElseThrow(() -> Problem.notFound("No public tree has this id or tag."));
	}

	private CountyPages.CountyLine county(String key) {
		return this.counties.list()
			.stream()
			.filter((line) -> line.key().equals(key))
			.findFirst()
			.orElseThrow(() -> Problem.notFound("No county has this key."));
	}

	/**
	 * Writes instants and days as people read them.
	 */
	public record Words(ZoneId zone) {

		private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.US);

		private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMMM yyyy", Locale.US);

		public String day(java.time.Instant instant) {
			return DAY.format(instant.atZone(this.zone));
		}

		public String day(java.time.LocalDate day) {
			return DAY.format(day);
		}

		/**
		 * A day, or the month or year as which alone it is known.
		 */
		public String known(KnownDay day) {
			return switch (day.precision()) {
				case DAY -> DAY.format(day.last());
				case MONTH -> MONTH.format(day.last());
				case YEAR -> day.toString();
			};
		}

		/**
		 * A lead in words: clear, likely, or too close to call.
		 */
		public String lead(double probability) {
			return Comparison.Clarity.of(probability).words();
		}

	}

	/**
	 * The read sides that the pages share with the API.
	 */
	@org.springframework.stereotype.Component
	record Readers(ReadStanding standing, ReadTitles titles, ReadTrees trees, ReadScores scores, CatchUp catchUp) {
	}

}

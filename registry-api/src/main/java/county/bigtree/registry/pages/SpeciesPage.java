package county.bigtree.registry.pages;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.domain.standing.Title;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.pages.picture.LeadPicture;
import county.bigtree.registry.pages.picture.LeadersPicture;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.species.SpeciesCatalogue;
import county.bigtree.registry.standing.BookKey;
import county.bigtree.registry.standing.ReadStanding;
import county.bigtree.registry.standing.ReadTitles;
import county.bigtree.registry.standing.StandingCursor;
import county.bigtree.registry.standing.StandingPage;
import county.bigtree.registry.standing.StandingQuestion;
import county.bigtree.registry.story.Story;
import county.bigtree.registry.story.TellStory;
import io.swagger.v3.oas.annotations.Hidden;
import org.jspecify.annotations.Nullable;

import org.springframework.context.MessageSource;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * A species in a county: its ranking, how sure the lead is, who led it through time, and
 * why that changed.
 */
@Controller
@Hidden
class SpeciesPage {

	private static final int SHOWN = 25;

	private static final int COMPARED = 6;

	/** So many at once that the page stays light. */
	private static final int TITLES = 40;

	private static final int STORY = 40;

	private static final Instant BEGINNING = Instant.EPOCH.minusSeconds(10_000_000_000L);

	private static final Instant END = Instant.EPOCH.plusSeconds(100_000_000_000L);

	/** Between one moment of the register and the next. */
	private static final Duration TICK = Duration.of(1, ChronoUnit.MICROS);

	private final CountyOfPage counties;

	private final SpeciesCatalogue species;

	private final Reads reads;

	private final MessageSource messages;

	SpeciesPage(CountyOfPage counties, SpeciesCatalogue species, Reads reads, MessageSource messages) {
		this.counties = counties;
		this.species = species;
		this.reads = reads;
		this.messages = messages;
	}

	@GetMapping("/counties/{county}/species/{species}")
	@Access(Who.ANYONE)
	String species(@PathVariable String county, @PathVariable String species,
			@RequestParam(required = false) @Nullable LocalDate asOf,
			@RequestParam(required = false) @Nullable String cursor, @RequestParam(defaultValue = "1") String titles,
			@ModelAttribute("units") Units units, Model model) {
		Words words = about(county, species, units, model);
		BookKey book = new BookKey(county, species);
		StandingQuestion question = (cursor == null) ? new StandingQuestion(asOf, null, null, SHOWN)
				: this.reads.cursors().question(Cursor.parse(StandingCursor.LIST, StandingCursor.PARTS, cursor), SHOWN);
		StandingPage standing = this.reads.standing().read(book, question);
		model.addAttribute("standing", standing);
		model.addAttribute("shared", isShared(standing.items()));
		model.addAttribute("first", question.after() == null);
		model.addAttribute("past", asOf != null && !standing.asOf().present());
		model.addAttribute("next", this.reads.cursors().next(standing, question));
		if (question.after() == null) {
			addLead(standing, model);
			addTitles(book, titles.matches("[1-9]\\d{0,4}") ? Integer.parseInt(titles) : 1, standing.asOf().day(),
					words, model);
		}
		return "species";
	}

	@GetMapping("/counties/{county}/species/{species}/story")
	@Access(Who.ANYONE)
	String story(@PathVariable String county, @PathVariable String species,
			@RequestParam(required = false) @Nullable Instant at, @Nullable Actor actor,
			@ModelAttribute("units") Units units, Model model) {
		about(county, species, units, model);
		Instant after = (at != null && at.isAfter(BEGINNING) && at.isBefore(END)) ? at.minus(TICK) : BEGINNING;
		Story story = this.reads.stories().ofSpecies(actor, new BookKey(county, species), after, STORY);
		model.addAttribute("story", story);
		model.addAttribute("at", after.equals(BEGINNING) ? null : at);
		Instant last = story.last();
		model.addAttribute("next", (last != null) ? last.plus(TICK) : null);
		return "species-story";
	}

	private Words about(String county, String species, Units units, Model model) {
		ReadCounties.County found = this.counties.get(county);
		Words words = CountyOfPage.words(found, units);
		model.addAttribute("county", found);
		model.addAttribute("feed", "/counties/" + county + "/titles.atom");
		model.addAttribute("species",
				this.species.find(species).orElseThrow(() -> Problem.notFound("No species has this key.")));
		model.addAttribute("words", words);
		return words;
	}

	private void addLead(StandingPage standing, Model model) {
		List<StandingPage.Item> items = standing.items();
		if (!items.isEmpty()) {
			model.addAttribute("leadPicture", LeadPicture.of(compared(items)));
		}
	}

	private void addTitles(BookKey book, int page, LocalDate today, Words words, Model model) {
		List<ReadTitles.Span> found = this.reads.titles().of(book, (page - 1) * TITLES, TITLES + 1);
		List<ReadTitles.Span> titles = found.subList(0, Math.min(found.size(), TITLES));
		model.addAttribute("titles", titles);
		model.addAttribute("newerTitles", (page > 1) ? page - 1 : null);
		model.addAttribute("olderTitles", (found.size() > TITLES) ? page + 1 : null);
		if (!titles.isEmpty()) {
			List<LeadersPicture.Held> held = titles.stream().map((span) -> held(span, words)).toList();
			LocalDate last = held.stream().map((one) -> one.until(today)).max(LocalDate::compareTo).orElse(today);
			model.addAttribute("leadersPicture", LeadersPicture.of(held, last));
		}
	}

	/** The first of the list, and the champion where it stands further down. */
	private List<LeadPicture.Ranked> compared(List<StandingPage.Item> items) {
		Stream<StandingPage.Item> first = items.stream().limit(COMPARED);
		Stream<StandingPage.Item> champion = items.stream()
			.skip(COMPARED)
			.filter((item) -> item.title() == Title.CHAMPION);
		boolean shared = isShared(items);
		return Stream.concat(first, champion).map((item) -> ranked(item, shared)).toList();
	}

	/** Whether whoever holds the title shares it: then each is called co-champion. */
	private static boolean isShared(List<StandingPage.Item> items) {
		return items.stream().anyMatch((item) -> item.title() == Title.CO_CHAMPION);
	}

	private LeadPicture.Ranked ranked(StandingPage.Item item, boolean shared) {
		ScoredTree scored = item.scored();
		Title title = shared ? Title.CO_CHAMPION : Title.CHAMPION;
		return new LeadPicture.Ranked(named(item.figures().tag()), (item.title() != null) ? title.word() : null,
				scored.score().points().toBigDecimal().doubleValue(), scored.score().standardUncertainty());
	}

	private LeadersPicture.Held held(ReadTitles.Span span, Words words) {
		String title = message("title." + span.title().word());
		Instant to = span.to();
		String told = (to == null) ? message("bar.told.held", title, words.day(span.from()))
				: message("bar.told", title, words.day(span.from()), words.day(to));
		String why = (span.ended() != null) ? message("reason." + span.ended()) : null;
		return new LeadersPicture.Held(named(span.tag()), named(span.tag()), span.title().word(),
				words.date(span.from()), (to != null) ? words.date(to) : null, told, why);
	}

	private String named(@Nullable String tag) {
		return (tag != null) ? tag : message("unlisted");
	}

	private String message(String key, Object... arguments) {
		return this.messages.getMessage(key, arguments, Locale.US);
	}

	/**
	 * What the page is made of.
	 */
	@org.springframework.stereotype.Component
	record Reads(ReadStanding standing, StandingCursor cursors, ReadTitles titles, TellStory stories) {
	}

}

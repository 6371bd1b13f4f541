package county.bigtree.registry.standing.web;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.http.Paging;
import county.bigtree.registry.standing.BookKey;
import county.bigtree.registry.standing.ReadTitles;
import county.bigtree.registry.standing.StandingCursor;
import county.bigtree.registry.standing.StandingPage;
import county.bigtree.registry.standing.StandingQuestion;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/**
 * Who leads: rankings, holders and titles.
 */
@RestController
@Tag(name = "Standings",
		description = "Who leads: rankings, titles and those who held them, on any day and as known at any instant.")
class StandingController {

	private static final String STANDINGS = "standings";

	private static final String TITLES = "titles";

	private final StandingAnswers answers;

	private final ReadTitles titles;

	private final StandingCursor cursors;

	StandingController(StandingAnswers answers, ReadTitles titles, StandingCursor cursors) {
		this.cursors = cursors;
		this.answers = answers;
		this.titles = titles;
	}

	@GetMapping("/api/v1/counties/{county}/species/{species}/standing")
	@Access(Who.ANYONE)
	@Operation(operationId = "getStanding",
			summary = "The ranking of a species in a county, on a day and as known at an instant")
	StandingJson standing(@PathVariable String county, @PathVariable String species,
			@RequestParam(required = false) @Nullable LocalDate asOf,
			@RequestParam(required = false) @Nullable String knownAt, Paging paging) {
		BookKey book = this.answers.book(county, species);
		Cursor cursor = paging.cursor(StandingCursor.LIST, StandingCursor.PARTS).orElse(null);
		StandingQuestion question = (cursor != null) ? this.cursors.question(cursor, paging.limit())
				: new StandingQuestion(asOf, this.answers.instant(county, knownAt), null, paging.limit());
		StandingPage page = this.answers.ask(book, question);
		return StandingJson.from(book, page, this.cursors.next(page, question));
	}

	@GetMapping("/api/v1/counties/{county}/standings")
	@Access(Who.ANYONE)
	@Operation(operationId = "listStandings",
			summary = "Every species of a county with who holds its titles and who leads its ranking")
	Page<SpeciesStandingJson> standings(@PathVariable String county,
			@RequestParam(required = false) @Nullable LocalDate asOf,
			@RequestParam(required = false) @Nullable String knownAt, Paging paging) {
		this.answers.requireCounty(county);
		Instant known = this.answers.instant(county, knownAt);
		String after = paging.cursor(STANDINGS, 1).map((cursor) -> cursor.string(0)).orElse("");
		List<String> species = this.answers.species(county, after, paging.oneMore());
		return Page.cut(species, paging,
				(key) -> SpeciesStandingJson.from(key,
						this.answers.ask(new BookKey(county, key),
								new StandingQuestion(asOf, known, null, SpeciesStandingJson.ENOUGH))),
				(last) -> Cursor.of(STANDINGS, last));
	}

	@GetMapping("/api/v1/counties/{county}/species/{species}/titles")
	@Access(Who.ANYONE)
	@Operation(operationId = "listTitles",
			summary = "The titles of a species in a county as they were recognised, newest first, with why each began and ended")
	Page<TitleJson> titles(@PathVariable String county, @PathVariable String species, Paging paging) {
		BookKey book = this.answers.book(county, species);
		int offset = paging.cursor(TITLES, 1).map((cursor) -> (int) cursor.number(0)).orElse(0);
		List<ReadTitles.Span> spans = this.titles.of(book, offset, paging.oneMore());
		return Page.cut(spans, paging, TitleJson::from, (last) -> Cursor.of(TITLES, offset + paging.limit()));
	}

	/**
	 * A species' titles and the top of its ranking.
	 */
	record SpeciesStandingJson(String species, LocalDate asOf, Instant recordedThrough, boolean speciesEligible,
			int total, List<StandingJson.Item> holders, StandingJson.@Nullable Item top) {

		/**
		 * More than ever share a title in practice; the ranking itself has them all.
		 */
		static final int ENOUGH = 50;

		static SpeciesStandingJson from(String species, StandingPage page) {
			List<StandingJson.Item> items = page.items().stream().map(StandingJson.Item::from).toList();
			return new SpeciesStandingJson(species, page.asOf().day(), page.recordedThrough(), page.speciesEligible(),
					page.total(), items.stream().filter((item) -> item.title() != null).toList(),
					items.isEmpty() ? null : items.get(0));
		}

	}

	/**
	 * A title over a span of time.
	 *
	 * @param tree null where the tree is not listed today, at an owner's wish
	 */
	record TitleJson(@Nullable UUID tree, @Nullable String tag, String title, Instant from, @Nullable Instant to,
			String began, @Nullable String ended, BigDecimal points, LocalDate measuredOn) {

		static TitleJson from(ReadTitles.Span span) {
			return new TitleJson(span.tree(), span.tag(), span.title().word(), span.from(), span.to(), span.began(),
					span.ended(), span.points(), span.measuredOn());
		}

	}

}

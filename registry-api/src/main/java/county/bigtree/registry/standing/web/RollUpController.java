package county.bigtree.registry.standing.web;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;

import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.http.Paged;
import county.bigtree.registry.http.Paging;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.species.SpeciesCatalogue;
import county.bigtree.registry.standing.ReadRollUp;
import county.bigtree.registry.standing.RollUpPage;
import county.bigtree.registry.standing.PageMarks;
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
 * Rankings over several counties.
 */
@RestController
@Tag(name = "Standings",
		description = "Who leads: rankings, titles and those who held them, on any day and as known at any instant.")
class RollUpController {

	private static final String ROLL_UP = "roll-up";

	private final ReadRollUp rollUp;

	private final SpeciesCatalogue species;

	private final PageMarks marks;

	RollUpController(ReadRollUp rollUp, SpeciesCatalogue species, PageMarks marks) {
		this.marks = marks;
		this.rollUp = rollUp;
		this.species = species;
	}

	@GetMapping("/api/v1/species/{species}/standing")
	@Access(Who.ANYONE)
	@Operation(operationId = "getRollUp",
			summary = "The ranking of a species over several counties, or over all that are not for practice; it keeps no titles")
	RollUpJson standing(@PathVariable String species, @RequestParam(required = false) @Nullable List<String> counties,
			Paging paging) {
		if (this.species.find(species).isEmpty()) {
			throw Problem.notFound("No species has this key.");
		}
		Cursor cursor = paging.cursor(ROLL_UP, 7).orElse(null);
		List<String> asked = (cursor != null) ? keys(cursor) : (counties != null) ? List.copyOf(counties) : List.of();
		StandingQuestion question = (cursor != null) ? next(cursor, paging.limit())
				: new StandingQuestion(null, null, null, paging.limit());
		RollUpPage page = this.rollUp.read(species, asked, question);
		return RollUpJson.from(species, page, page.more() ? cursor(page, question, asked).text() : null);
	}

	private static List<String> keys(Cursor cursor) {
		String keys = cursor.string(6);
		return keys.isEmpty() ? List.of() : Arrays.asList(keys.split(",", -1));
	}

	private StandingQuestion next(Cursor cursor, int limit) {
		return new StandingQuestion(null, cursor.instant(5), new StandingQuestion.After((int) cursor.number(0),
				(int) cursor.number(1), cursor.decimal(2), this.marks.tree(cursor.number(3)), cursor.decimal(4)),
				limit);
	}

	private Cursor cursor(RollUpPage page, StandingQuestion question, List<String> asked) {
		StandingPage.Item last = page.items().get(page.items().size() - 1).place();
		BigDecimal points = last.scored().score().points().toBigDecimal();
		StandingQuestion.After after = question.after();
		BigDecimal leader = (after != null) ? after.leaderPoints() : points.add(last.behindLeader());
		return Cursor.of(ROLL_UP, last.position(), last.rank(), points, this.marks.of(last.scored()), leader,
				knownAt(page), String.join(",", asked));
	}

	private static Instant knownAt(RollUpPage page) {
		return page.asOf().present() ? page.recordedThrough() : page.asOf().knownAt();
	}

	/**
	 * A page of a ranking over several counties.
	 *
	 * @param practice whether a county for practice is among them
	 */
	record RollUpJson(String species, List<String> counties, boolean practice, LocalDate asOf, Instant knownAt,
			Instant recordedThrough, int total, List<RankedJson> items, @Nullable String next) implements Paged {

		static RollUpJson from(String species, RollUpPage page, @Nullable String next) {
			return new RollUpJson(species, page.counties(), page.practice(), page.asOf().day(),
					RollUpController.knownAt(page), page.recordedThrough(), page.total(),
					page.items().stream().map(RankedJson::from).toList(), next);
		}

	}

	/**
	 * A ranked tree and the county where it stands.
	 *
	 * @param listed whether it may be shown as itself: else an owner wishes otherwise,
	 * and nothing is said that leads to it
	 */
	record RankedJson(int rank, String county, @Nullable UUID tree, @Nullable String tag, boolean listed,
			BigDecimal points, BigDecimal pointsStandardUncertainty, int pointsRounded, BigDecimal girthInches,
			BigDecimal heightFeet, @Nullable LocalDate heightMeasuredOn, BigDecimal crownSpreadFeet,
			@Nullable LocalDate crownMeasuredOn, @Nullable UUID measurement, KnownDay measuredOn, LocalDate effectiveOn,
			boolean stale, boolean damaged, boolean carriedOver, BigDecimal behindLeader, @Nullable BigDecimal lead,
			@Nullable BigDecimal leadStandardUncertainty, @Nullable BigDecimal leadProbability,
			@Nullable String leadClarity) {

		static RankedJson from(RollUpPage.Item item) {
			StandingJson.Item place = StandingJson.Item.from(item.place());
			return new RankedJson(place.rank(), item.county(), place.tree(), place.tag(), place.listed(),
					place.points(), place.pointsStandardUncertainty(), place.pointsRounded(), place.girthInches(),
					place.heightFeet(), place.heightMeasuredOn(), place.crownSpreadFeet(), place.crownMeasuredOn(),
					place.measurement(), place.measuredOn(), place.effectiveOn(), place.stale(), place.damaged(),
					place.carriedOver(), place.behindLeader(), place.lead(), place.leadStandardUncertainty(),
					place.leadProbability(), place.leadClarity());
		}

	}

}

package county.bigtree.registry.desk.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import county.bigtree.domain.standing.Title;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.desk.Due;
import county.bigtree.registry.desk.ListDue;
import county.bigtree.registry.desk.ListQueue;
import county.bigtree.registry.desk.Waiting;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.http.Paging;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.standing.CatchUp;
import county.bigtree.registry.standing.ReadStandings;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/**
 * What a county's coordinator has to see to.
 */
@RestController
@Tag(name = "Desk", description = "What a county's coordinator has to see to.")
class DeskController {

	private static final String DUE = "due";

	private static final String QUEUE = "queue";

	private final ListDue due;

	private final ListQueue queue;

	private final CatchUp catchUp;

	private final ReadStandings counties;

	DeskController(ListDue due, ListQueue queue, CatchUp catchUp, ReadStandings counties) {
		this.due = due;
		this.queue = queue;
		this.catchUp = catchUp;
		this.counties = counties;
	}

	@GetMapping("/api/v1/counties/{county}/due")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "listDue",
			summary = "Title holders and trees of rank 1 to 3 to be measured again: the damaged, and those whose measurement is no longer current on a day")
	Page<DueJson> due(@PathVariable String county, @RequestParam(required = false) @Nullable LocalDate before,
			Paging paging) {
		requireCounty(county);
		Cursor cursor = paging.cursor(DUE, 3).orElse(null);
		List<Due> all = this.due.of(county, before);
		List<Due> rest = all.stream()
			.filter((one) -> cursor == null || isAfter(one, cursor))
			.limit(paging.oneMore())
			.toList();
		return Page.cut(rest, paging, DueJson::from, (last) -> Cursor.of(DUE, last.why(), last.dueOn(), last.tag()));
	}

	@GetMapping("/api/v1/counties/{county}/queue")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "listQueue",
			summary = "What waits for a decision: first the extraordinary, then what bears on a title, then what has waited longest")
	Page<WaitingJson> queue(@PathVariable String county, Paging paging) {
		requireCounty(county);
		Cursor cursor = paging.cursor(QUEUE, 3).orElse(null);
		List<Waiting> rest = this.queue.of(county)
			.stream()
			.filter((one) -> cursor == null || isAfter(one, cursor))
			.limit(paging.oneMore())
			.toList();
		return Page.cut(rest, paging, WaitingJson::from,
				(last) -> Cursor.of(QUEUE, last.turn(), last.since(), last.id()));
	}

	private void requireCounty(String county) {
		if (!this.counties.knows(county)) {
			throw Problem.notFound("No county has this key.");
		}
		this.catchUp.county(county);
	}

	/**
	 * Whether the tree comes after the last one of the page before.
	 */
	private static boolean isAfter(Due one, Cursor cursor) {
		int byWhy = one.why().name().compareTo(cursor.string(0));
		int byDay = one.dueOn().compareTo(cursor.day(1));
		return byWhy > 0 || byWhy == 0 && (byDay > 0 || byDay == 0 && one.tag().compareTo(cursor.string(2)) > 0);
	}

	private static boolean isAfter(Waiting one, Cursor cursor) {
		int byWeight = Long.compare(one.turn(), cursor.number(0));
		int byAge = one.since().compareTo(cursor.instant(1));
		int byId = one.id().toString().compareTo(cursor.uuid(2).toString());
		return byWeight > 0 || byWeight == 0 && (byAge > 0 || byAge == 0 && byId > 0);
	}

	/**
	 * Something that waits.
	 *
	 * @param largestProbability how likely it is that its tree is truly larger than the
	 * largest other one of the ranking
	 */
	record WaitingJson(String kind, UUID id, @Nullable UUID tree, @Nullable String tag, @Nullable String species,
			String status, Instant since, @Nullable BigDecimal points, @Nullable String wouldHold,
			@Nullable BigDecimal largestProbability, @Nullable String title, boolean extraordinary,
			@Nullable LocalDate lapsesOn) {

		static WaitingJson from(Waiting waiting) {
			return new WaitingJson(waiting.kind(), waiting.id(), waiting.tree(), waiting.tag(), waiting.species(),
					waiting.status(), waiting.since(), waiting.points(), word(waiting.wouldHold()),
					probability(waiting.largestProbability()), word(waiting.title()), waiting.extraordinary(),
					waiting.lapsesOn());
		}

	}

	/**
	 * A tree that is due.
	 */
	record DueJson(UUID tree, String tag, String species, int rank, @Nullable String title, LocalDate measuredOn,
			LocalDate dueOn, String why) {

		static DueJson from(Due due) {
			return new DueJson(due.tree(), due.tag(), due.species(), due.rank(), word(due.title()), due.measuredOn(),
					due.dueOn(), due.why().word());
		}

	}

	private static @Nullable BigDecimal probability(@Nullable Double probability) {
		return (probability != null) ? BigDecimal.valueOf(probability).setScale(4, RoundingMode.HALF_UP) : null;
	}

	private static @Nullable String word(@Nullable Title title) {
		return (title != null) ? title.word() : null;
	}

}

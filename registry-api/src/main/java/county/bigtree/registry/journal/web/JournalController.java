package county.bigtree.registry.journal.web;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.http.Paging;
import county.bigtree.registry.journal.ReadJournal;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.standing.ReadStandings;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/**
 * What was changed in a county, by whom and why.
 */
@RestController
@Tag(name = "Journal", description = "What was changed in a county, when, by whom and why.")
class JournalController {

	private static final String JOURNAL = "journal";

	private final ReadJournal journal;

	private final ReadStandings counties;

	JournalController(ReadJournal journal, ReadStandings counties) {
		this.journal = journal;
		this.counties = counties;
	}

	@GetMapping("/api/v1/counties/{county}/journal")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "listJournal", summary = "Every change of a county, newest first: who, when, what and why")
	Page<ReadJournal.Recorded> list(@PathVariable String county,
			@Parameter(description = "The first day wanted, in UTC") @RequestParam(
					required = false) @Nullable LocalDate from,
			@Parameter(description = "The last day wanted, in UTC") @RequestParam(
					required = false) @Nullable LocalDate to,
			Paging paging) {
		if (!this.counties.knows(county)) {
			throw Problem.notFound("No county has this key.");
		}
		long before = paging.cursor(JOURNAL, 1).map((cursor) -> cursor.number(0)).orElse(Long.MAX_VALUE);
		return Page.cut(this.journal.of(county, before, start(from, 0), start(to, 1), paging.oneMore()), paging,
				(change) -> change, (last) -> Cursor.of(JOURNAL, last.seq()));
	}

	private static @Nullable Instant start(@Nullable LocalDate day, int daysOn) {
		if (day == null) {
			return null;
		}
		if (day.getYear() < 1 || day.getYear() > 9999) {
			throw Problem.of(ProblemType.INVALID_PARAMETER, "A day must be of the years 1 to 9999.");
		}
		return day.plusDays(daysOn).atStartOfDay(ZoneOffset.UTC).toInstant();
	}

}

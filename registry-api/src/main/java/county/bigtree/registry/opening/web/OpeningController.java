package county.bigtree.registry.opening.web;

import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.http.Page;
import county.bigtree.registry.http.Paging;
import county.bigtree.registry.opening.Openings;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.standing.ReadStandings;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/**
 * Who looked at what is private.
 */
@RestController
@Tag(name = "Openings", description = "Who looked at what is private, and when.")
class OpeningController {

	private static final String OPENINGS = "openings";

	private final Openings openings;

	private final ReadStandings counties;

	OpeningController(Openings openings, ReadStandings counties) {
		this.openings = openings;
		this.counties = counties;
	}

	@GetMapping("/api/v1/counties/{county}/openings")
	@Access(Who.COORDINATOR)
	@Operation(operationId = "listOpenings",
			summary = "Who opened an owner's contact, an exact place, a letter or other private words, latest first")
	Page<Openings.Opening> list(@PathVariable String county, Paging paging) {
		if (!this.counties.knows(county)) {
			throw Problem.notFound("No county has this key.");
		}
		UUID before = paging.cursor(OPENINGS, 1).map((cursor) -> cursor.uuid(0)).orElse(null);
		return Page.cut(this.openings.of(county, before, paging.oneMore()), paging, (opening) -> opening,
				(last) -> Cursor.of(OPENINGS, last.id()));
	}

}

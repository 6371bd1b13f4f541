package county.bigtree.registry.openness.web;

import java.util.List;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.openness.OpenCounties;
import county.bigtree.registry.openness.ReadTitleChanges;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import io.swagger.v3.oas.annotations.Hidden;
import org.jspecify.annotations.Nullable;

import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/**
 * The title changes of a county, or of all, for feed readers.
 */
@RestController
@Hidden
class TitleFeedController {

	private static final int PAGE = 50;

	private static final int LAST_PAGE = 1000;

	private final OpenCounties counties;

	private final ReadTitleChanges changes;

	private final TitleFeed feed;

	TitleFeedController(OpenCounties counties, ReadTitleChanges changes, TitleFeed feed) {
		this.counties = counties;
		this.changes = changes;
		this.feed = feed;
	}

	@GetMapping(path = "/titles.atom", produces = TitleFeed.TYPE)
	@Access(Who.ANYONE)
	ResponseEntity<byte[]> all(@RequestParam(defaultValue = "1") String page) {
		return answer("/titles.atom", "/", null, page);
	}

	@GetMapping(path = "/counties/{county}/titles.atom", produces = TitleFeed.TYPE)
	@Access(Who.ANYONE)
	ResponseEntity<byte[]> county(@PathVariable String county, @RequestParam(defaultValue = "1") String page) {
		ReadCounties.County found = this.counties.get(county);
		return answer("/counties/" + county + "/titles.atom", "/counties/" + county, found, page);
	}

	private ResponseEntity<byte[]> answer(String path, String about, ReadCounties.@Nullable County county,
			String page) {
		int number = page.matches("[1-9]\\d{0,3}") ? Integer.parseInt(page) : 0;
		if (number < 1 || number > LAST_PAGE) {
			throw Problem
				.of(ProblemType.INVALID_PARAMETER, "The page must be a whole number from 1 to " + LAST_PAGE + ".")
				.with("parameter", "page");
		}
		List<ReadTitleChanges.Change> found = this.changes.latest((county != null) ? county.key() : null,
				(number - 1) * PAGE, PAGE + 1);
		TitleFeed.Asked asked = new TitleFeed.Asked(path, about, (county != null) ? county.name() : null, number,
				found.size() > PAGE);
		return ResponseEntity.ok()
			.contentType(MediaType.parseMediaType(TitleFeed.TYPE + ";charset=utf-8"))
			.body(this.feed.write(asked, found.subList(0, Math.min(found.size(), PAGE))));
	}

}

package county.bigtree.registry.pages;

import java.time.ZoneId;

import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.standing.CatchUp;

import org.springframework.stereotype.Component;

/**
 * Finds the county that a page is about, brought up to today. Those for practice have no
 * public page.
 */
@Component
public class CountyOfPage {

	private final ReadCounties counties;

	private final CatchUp catchUp;

	CountyOfPage(ReadCounties counties, CatchUp catchUp) {
		this.counties = counties;
		this.catchUp = catchUp;
	}

	public ReadCounties.County get(String key) {
		ReadCounties.County county = this.counties.find(key)
			.filter((found) -> !found.practice())
			.orElseThrow(() -> Problem.notFound("No county has this key."));
		this.catchUp.county(key);
		return county;
	}

	static Words words(ReadCounties.County county, Units units) {
		return new Words(ZoneId.of(county.timeZone()), units);
	}

}

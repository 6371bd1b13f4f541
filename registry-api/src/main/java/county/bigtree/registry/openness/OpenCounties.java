package county.bigtree.registry.openness;

import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.standing.CatchUp;

import org.springframework.stereotype.Component;

/**
 * The counties whose data is open: all that are not for practice.
 */
@Component
public class OpenCounties {

	private final ReadCounties counties;

	private final CatchUp catchUp;

	OpenCounties(ReadCounties counties, CatchUp catchUp) {
		this.counties = counties;
		this.catchUp = catchUp;
	}

	/**
	 * The county with this key, brought up to today.
	 * @throws Problem where there is none, or it is for practice
	 */
	public ReadCounties.County get(String key) {
		ReadCounties.County county = this.counties.find(key)
			.filter((found) -> !found.practice())
			.orElseThrow(() -> Problem.notFound("No county with open data has this key."));
		this.catchUp.county(key);
		return county;
	}

}

package county.bigtree.registry.standing;

import java.time.Instant;
import java.util.List;

/**
 * A page of a species' ranking over several counties.
 *
 * @param counties the counties, by key
 * @param practice whether one for practice is among them
 * @param asOf the latest day that has begun in any of them, and what is known
 * @param recordedThrough the last change that the answer knows
 * @param total how many trees are ranked
 * @param items the trees of this page
 * @param more whether trees follow
 */
public record RollUpPage(List<String> counties, boolean practice, AsOf asOf, Instant recordedThrough, int total,
		List<Item> items, boolean more) {

	/**
	 * A ranked tree and the county where it stands.
	 */
	public record Item(String county, StandingPage.Item place) {
	}

}

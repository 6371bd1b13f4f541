package county.bigtree.registry.county;

import java.util.function.LongConsumer;

import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.JsonNode;

/**
 * Changes what may change of a county. Its key, time zone and tag prefix never do.
 */
@Service
public class ChangeCounty {

	private final Journal journal;

	private final Facts facts;

	private final ReadCounties counties;

	ChangeCounty(Journal journal, Facts facts, ReadCounties counties) {
		this.journal = journal;
		this.facts = facts;
		this.counties = counties;
	}

	/**
	 * Records the change.
	 * @param unchanged told the county's revision under the lock; refuses a stale one
	 */
	@Transactional
	public void change(Actor actor, String county, CountyChangeBody body, LongConsumer unchanged) {
		if (!actor.isCoordinatorOf(county)) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Only a coordinator of the county may change it.");
		}
		Change change = this.journal.open(county);
		ReadCounties.County present = this.counties.find(county).orElseThrow();
		unchanged.accept(present.revision());
		this.facts.append(change, FactTable.COUNTY_REVISION, "id", Uuid7.next(), "name",
				(body.name() != null) ? body.name() : present.name(), "state",
				(body.state() != null) ? body.state() : present.state(), "boundary",
				boundary(body.boundary(), present.boundary()));
		this.journal.close(change, "county-changed", actor.id());
	}

	private static @Nullable String boundary(@Nullable JsonNode asked, @Nullable String present) {
		if (asked == null) {
			return present;
		}
		return asked.isNull() ? null : asked.toString();
	}

}

package county.bigtree.registry.visit;

import java.util.List;
import java.util.UUID;

import county.bigtree.registry.journal.Change;
import county.bigtree.registry.people.AssignedWork;
import county.bigtree.registry.tree.ChangeAtTree;
import county.bigtree.registry.tree.TreeDirectory;

import org.springframework.dao.ConcurrencyFailureException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Hands back the visits that someone who leaves has still to make: nothing came of them,
 * and the coordinators may plan others.
 */
@Component
class HandBackVisits implements AssignedWork {

	private static final String OPEN = """
			select v.id, v.tree from visit v
			join lateral (select stands_in from location where tree = v.tree order by recorded_at desc limit 1) l on true
			where v.verifier = :person and not exists (select from visit_outcome where visit = v.id)
			  and not exists (select from taking_off where tree = v.tree)
			  and (cast(:county as text) is null or l.stands_in = :county)
			  and (cast(:only as uuid) is null or v.id = :only)
			order by l.stands_in, v.id""";

	private final JdbcClient jdbc;

	private final TreeDirectory trees;

	private final ChangeAtTree changes;

	private final VisitRecorder recorder;

	HandBackVisits(JdbcClient jdbc, TreeDirectory trees, ChangeAtTree changes, VisitRecorder recorder) {
		this.jdbc = jdbc;
		this.trees = trees;
		this.changes = changes;
		this.recorder = recorder;
	}

	@Override
	public void handBack(Leaving leaving) {
		open(leaving, null).forEach((visit) -> handBack(visit, leaving));
	}

	private List<Open> open(Leaving leaving, @org.jspecify.annotations.Nullable UUID only) {
		return this.jdbc.sql(OPEN)
			.param("person", leaving.person())
			.param("county", leaving.county(), java.sql.Types.VARCHAR)
			.param("only", only, java.sql.Types.OTHER)
			.query(Open.class)
			.list();
	}

	private void handBack(Open visit, Leaving leaving) {
		Change change = this.changes.openAnyhow(this.trees.get(visit.tree()));
		if (open(leaving, visit.id()).isEmpty()) {
			throw new ConcurrencyFailureException("What came of the visit was told meanwhile");
		}
		this.recorder.handedBack(change, visit.id(), leaving);
	}

	private record Open(UUID id, UUID tree) {
	}

}

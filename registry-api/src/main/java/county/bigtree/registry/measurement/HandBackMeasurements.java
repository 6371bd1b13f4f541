package county.bigtree.registry.measurement;

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
 * Hands back the remeasurements that are assigned to someone who leaves.
 */
@Component
class HandBackMeasurements implements AssignedWork {

	private static final String ASSIGNED = """
			select m.id from (select distinct measurement from measurement_move where verifier = :person) mine
			join measurement m on m.id = mine.measurement
			join lateral (select move, to_status, verifier from measurement_move where measurement = m.id
			  order by recorded_at desc limit 1) last on last.to_status = 'assigned' and last.verifier = :person
			join lateral (select stands_in from location where tree = m.tree order by recorded_at desc limit 1) l on true
			where not exists (select from sign_off where measurement = m.id)
			  and not exists (select from setting_aside where measurement = m.id)
			  and (cast(:county as text) is null or l.stands_in = :county)
			  and (cast(:only as uuid) is null or m.id = :only)
			order by l.stands_in, m.id""";

	private final JdbcClient jdbc;

	private final ReadMeasurements measurements;

	private final TreeDirectory trees;

	private final ChangeAtTree changes;

	private final MoveMeasurement.Recorder recorder;

	HandBackMeasurements(JdbcClient jdbc, ReadMeasurements measurements, TreeDirectory trees, ChangeAtTree changes,
			MoveMeasurement.Recorder recorder) {
		this.jdbc = jdbc;
		this.measurements = measurements;
		this.trees = trees;
		this.changes = changes;
		this.recorder = recorder;
	}

	@Override
	public void handBack(Leaving leaving) {
		assigned(leaving, null).forEach((measurement) -> handBack(measurement, leaving));
	}

	private List<UUID> assigned(Leaving leaving, @org.jspecify.annotations.Nullable UUID only) {
		return this.jdbc.sql(ASSIGNED)
			.param("person", leaving.person())
			.param("county", leaving.county(), java.sql.Types.VARCHAR)
			.param("only", only, java.sql.Types.OTHER)
			.query(UUID.class)
			.list();
	}

	private void handBack(UUID id, Leaving leaving) {
		Change change = this.changes.openAnyhow(this.trees.get(this.measurements.get(id).tree()));
		if (assigned(leaving, id).isEmpty()) {
			throw new ConcurrencyFailureException("The measurement was moved meanwhile");
		}
		this.recorder.handBack(change, id, leaving);
	}

}

package county.bigtree.registry.visit;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import county.bigtree.registry.people.Actor;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * What was assigned to a verifier and waits for their sign-off: nominations and
 * remeasurements of trees in counties where they verify.
 */
@Component
public class Assignments {

	private static final String ASSIGNED = """
			select a.id, a.kind, a.measurement, a.tree, t.tag, i.species, l.stands_in as county, m.measured_on, a.assigned_at,
			  (select v.id from visit v where v.tree = a.tree and v.verifier = :actor
			    and not exists (select from visit_outcome where visit = v.id) order by v.id limit 1) as visit
			from (
			  select n.id, 'nomination' as kind, n.measurement, n.tree, (select max(recorded_at) from nomination_move
			    where nomination = n.id and verifier = :actor) as assigned_at
			  from nomination n where n.verifier = :actor and n.status = 'under-review'
			  union all
			  select r.id, 'remeasurement', r.id, measurement_tree(r.id, r.tree), last.recorded_at
			  from (select distinct measurement from measurement_move where verifier = :actor) mine
			  join measurement r on r.id = mine.measurement
			  join lateral (select to_status, verifier, recorded_at from measurement_move where measurement = r.id
			    order by recorded_at desc limit 1) last on last.to_status = 'assigned' and last.verifier = :actor
			  where not exists (select from setting_aside where measurement = r.id)
			) a
			join measurement m on m.id = a.measurement join tree t on t.id = a.tree
			join lateral (select stands_in from location where tree = a.tree order by recorded_at desc limit 1) l on true
			join lateral (select species from identification where tree = a.tree order by recorded_at desc limit 1) i on true
			where a.id > :after and l.stands_in = any(:verified)
			  and not exists (select from sign_off s where s.measurement = a.measurement and s.given_by = :actor
			    and not exists (select from revocation where sign_off = s.id))
			  and not exists (select from taking_off where tree = a.tree)
			order by a.id limit :limit""";

	private final JdbcClient jdbc;

	Assignments(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * Those of the actor on which they have not signed off, in the order of their filing.
	 */
	public List<Assignment> of(Actor actor, UUID after, int limit) {
		return this.jdbc.sql(ASSIGNED)
			.param("actor", actor.id())
			.param("verified", actor.roles().keySet().stream().filter(actor::isVerifierIn).toArray(String[]::new))
			.param("after", after)
			.param("limit", limit)
			.query(Assignment.class)
			.list();
	}

	/**
	 * Something assigned to a verifier.
	 *
	 * @param id of the nomination or of the remeasurement
	 * @param kind nomination or remeasurement
	 * @param measurement the one to be signed off
	 * @param county where the tree stands now
	 * @param visit the verifier's open visit to the tree, or null where none is planned
	 */
	public record Assignment(UUID id, String kind, UUID measurement, UUID tree, String tag, String species,
			String county, LocalDate measuredOn, Instant assignedAt, @Nullable UUID visit) {
	}

}

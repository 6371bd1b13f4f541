package county.bigtree.registry.standing;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Stream;

import county.bigtree.domain.points.Comparison;
import county.bigtree.domain.points.Score;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * How likely it is of each measurement that waits that its tree is truly larger than the
 * largest other one of its ranking, in one statement for any number of them.
 */
@Service
public class SurpassLeaders {

	private final JdbcClient jdbc;

	SurpassLeaders(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * The probabilities by measurement, from 0 to 1; those without another tree to be
	 * compared with are left out.
	 */
	@Transactional(readOnly = true)
	public Map<UUID, Double> of(Collection<WeighWaiting.Waits> waiting) {
		Map<UUID, Double> probabilities = new HashMap<>();
		this.jdbc
			.sql("""
					select w.measurement, r.points, r.points_u, s.points as leader, s.points_u as leader_u
					from unnest(cast(:measurements as uuid[]), cast(:trees as uuid[]), cast(:counties as text[]), cast(:species as text[]))
					  as w(measurement, tree, county, species)
					join lateral (select points, points_u from reduction where measurement = w.measurement
					  order by version desc limit 1) r on r.points is not null
					join lateral (select points, points_u from score where county = w.county and species = w.species
					  and withdrawn_at is null and ends_on is null and tree <> w.tree order by points desc limit 1) s on true""")
			.param("measurements", all(waiting, WeighWaiting.Waits::measurement).toArray(UUID[]::new))
			.param("trees", all(waiting, WeighWaiting.Waits::tree).toArray(UUID[]::new))
			.param("counties", all(waiting, (one) -> one.book().county()).toArray(String[]::new))
			.param("species", all(waiting, (one) -> one.book().species()).toArray(String[]::new))
			.query((row) -> {
				Score own = new Score(ScoreRows.points(row.getBigDecimal("points")), row.getDouble("points_u"));
				Score leader = new Score(ScoreRows.points(row.getBigDecimal("leader")), row.getDouble("leader_u"));
				probabilities.put(row.getObject("measurement", UUID.class), Comparison.of(own, leader).probability());
			});
		return probabilities;
	}

	private static <T> Stream<T> all(Collection<WeighWaiting.Waits> waiting, Function<WeighWaiting.Waits, T> part) {
		return waiting.stream().map(part);
	}

}

package county.bigtree.registry.lookup;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * The score history of a tree: each counting measurement with when the register learned
 * of it and, where it no longer holds, when it was withdrawn. Spans that part only where
 * the tree was seen again or lost a part are told as one.
 */
@Service
public class ReadScores {

	private final JdbcClient jdbc;

	ReadScores(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * The scores of a tree, newest measuring day first.
	 */
	@Transactional(readOnly = true)
	public List<ScoreOfDay> of(UUID tree) {
		return of(List.of(tree)).getOrDefault(tree, List.of());
	}

	/**
	 * The scores of each of the trees that has any, newest measuring day first.
	 */
	@Transactional(readOnly = true)
	public Map<UUID, List<ScoreOfDay>> of(Collection<UUID> trees) {
		Map<UUID, List<ScoreOfDay>> histories = new HashMap<>();
		this.jdbc
			.sql("""
					select s.tree, s.girth_by, s.height_by, s.crown_by, s.measurement, s.species, s.points, s.points_u, s.measured_on, s.carried_over,
					  min(s.recorded_at) as recorded_at,
					  case when bool_and(s.withdrawn_at is not null) then max(s.withdrawn_at) end as withdrawn_at,
					  case when bool_and(s.withdrawn_at is not null) then (array_agg(s.withdrawn order by s.withdrawn_at desc))[1] end
					    as withdrawn,
					  g.*, h.height_feet, h.height_u, case when s.height_from is not null then h.measured_on end as height_on,
					  c.crown_feet, c.crown_u, case when s.crown_from is not null then c.measured_on end as crown_on,
					  known_day(v.measured_on, v.measured_on_known_to) as measured
					from score s join measurement v on v.id = s.measurement
					cross join lateral (select girth_inches, girth_u from reduction where measurement = s.measurement
					  and recorded_at < coalesce(s.withdrawn_at, 'infinity') order by version desc limit 1) g
					cross join lateral (select r.height_feet, r.height_u, m.measured_on
					  from measurement m join reduction r on r.measurement = m.id
					  where m.id = coalesce(s.height_from, s.measurement)
					    and r.recorded_at < coalesce(s.withdrawn_at, 'infinity') order by r.version desc limit 1) h
					cross join lateral (select r.crown_feet, r.crown_u, m.measured_on
					  from measurement m join reduction r on r.measurement = m.id
					  where m.id = coalesce(s.crown_from, s.measurement)
					    and r.recorded_at < coalesce(s.withdrawn_at, 'infinity') order by r.version desc limit 1) c
					where s.tree = any(:trees)
					group by s.tree, s.girth_by, s.height_by, s.crown_by, s.measurement, s.species, s.points, s.points_u, s.measured_on, s.carried_over, s.height_from,
					  s.crown_from, g.girth_inches, g.girth_u, h.height_feet, h.height_u, h.measured_on, c.crown_feet, c.crown_u,
					  c.measured_on, v.measured_on, v.measured_on_known_to
					order by s.measured_on desc, recorded_at desc""")
			.param("trees", trees.toArray(UUID[]::new))
			.query((row) -> {
				histories.computeIfAbsent(row.getObject("tree", UUID.class), (tree) -> new ArrayList<>())
					.add(score(row));
			});
		return histories;
	}

	private static ScoreOfDay score(ResultSet row) throws SQLException {
		return new ScoreOfDay(row.getObject("measurement", UUID.class), row.getString("species"),
				row.getBigDecimal("points"), row.getBigDecimal("points_u"), row.getBigDecimal("girth_inches"),
				row.getBigDecimal("girth_u"), row.getBigDecimal("height_feet"), row.getBigDecimal("height_u"),
				row.getObject("height_on", LocalDate.class), row.getBigDecimal("crown_feet"),
				row.getBigDecimal("crown_u"), row.getObject("crown_on", LocalDate.class),
				row.getObject("measured_on", LocalDate.class), KnownDay.parse(row.getString("measured")),
				row.getBoolean("carried_over"), SqlTime.get(row, "recorded_at"), SqlTime.find(row, "withdrawn_at"),
				row.getString("withdrawn"), row.getString("girth_by"), row.getString("height_by"),
				row.getString("crown_by"));
	}

	/**
	 * A score with the figures behind it.
	 *
	 * @param measured the measuring day as exactly as it is known
	 * @param heightOn the day of the height where an earlier visit's stands in
	 * @param crownOn the day of the crown spread where an earlier visit's stands in
	 * @param girthBy the method by which the girth was measured, if that is known
	 * @param heightBy that of the height
	 * @param crownBy that of the crown spread
	 */
	public record ScoreOfDay(UUID measurement, String species, BigDecimal points, BigDecimal pointsU,
			BigDecimal girthInches, BigDecimal girthU, BigDecimal heightFeet, BigDecimal heightU,
			@Nullable LocalDate heightOn, BigDecimal crownFeet, BigDecimal crownU, @Nullable LocalDate crownOn,
			LocalDate measuredOn, KnownDay measured, boolean carriedOver, Instant recordedAt,
			@Nullable Instant withdrawnAt, @Nullable String withdrawn, @Nullable String girthBy,
			@Nullable String heightBy, @Nullable String crownBy) {
	}

}

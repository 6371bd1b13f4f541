package county.bigtree.registry.lookup;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

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
		return this.jdbc
			.sql("""
					select s.measurement, s.species, s.points, s.points_u, s.measured_on, s.carried_over,
					  min(s.recorded_at) as recorded_at,
					  case when bool_and(s.withdrawn_at is not null) then max(s.withdrawn_at) end as withdrawn_at,
					  case when bool_and(s.withdrawn_at is not null) then (array_agg(s.withdrawn order by s.withdrawn_at desc))[1] end
					    as withdrawn,
					  min(r.girth_inches) as girth_inches, min(r.girth_u) as girth_u, min(r.height_feet) as height_feet,
					  min(r.height_u) as height_u, min(r.crown_feet) as crown_feet, min(r.crown_u) as crown_u
					from score s join reduction r on r.measurement = s.measurement and r.points = s.points
					where s.tree = :tree
					group by s.measurement, s.species, s.points, s.points_u, s.measured_on, s.carried_over
					order by s.measured_on desc, recorded_at desc""")
			.param("tree", tree)
			.query((row, number) -> new ScoreOfDay(row.getObject("measurement", UUID.class), row.getString("species"),
					row.getBigDecimal("points"), row.getBigDecimal("points_u"), row.getBigDecimal("girth_inches"),
					row.getBigDecimal("girth_u"), row.getBigDecimal("height_feet"), row.getBigDecimal("height_u"),
					row.getBigDecimal("crown_feet"), row.getBigDecimal("crown_u"),
					row.getObject("measured_on", LocalDate.class), row.getBoolean("carried_over"),
					SqlTime.get(row, "recorded_at"), SqlTime.find(row, "withdrawn_at"), row.getString("withdrawn")))
			.list();
	}

	/**
	 * A score with the figures behind it.
	 */
	public record ScoreOfDay(UUID measurement, String species, BigDecimal points, BigDecimal pointsU,
			BigDecimal girthInches, BigDecimal girthU, BigDecimal heightFeet, BigDecimal heightU, BigDecimal crownFeet,
			BigDecimal crownU, LocalDate measuredOn, boolean carriedOver, Instant recordedAt,
			@Nullable Instant withdrawnAt, @Nullable String withdrawn) {
	}

}

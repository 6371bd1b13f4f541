package county.bigtree.registry.standing;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;

import county.bigtree.domain.points.Points;
import county.bigtree.domain.points.Score;
import county.bigtree.domain.standing.Condition;
import county.bigtree.domain.standing.TreeFacts;
import county.bigtree.domain.standing.TreeFacts.Found;
import county.bigtree.domain.standing.TreeFacts.Measured;
import county.bigtree.domain.standing.TreeFacts.SignedOff;
import county.bigtree.domain.standing.TreeFacts.Verdict;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Reads the few facts on which a tree's scores depend, as known at an instant.
 */
@Component
class TreeFactsReader {

	private static final String PLACE = """
			select i.species, s.genus_only, l.stands_in,
			  exists (select from acceptance a where a.tree = :tree and a.recorded_at <= :known) as accepted
			from tree t
			join lateral (select species from identification where tree = t.id and recorded_at <= :known
			  order by recorded_at desc limit 1) i on true
			join lateral (select stands_in from location where tree = t.id and recorded_at <= :known
			  order by recorded_at desc limit 1) l on true
			join species s on s.key = i.species
			where t.id = :tree""";

	private static final String MEASUREMENTS = """
			select m.id, m.measured_on, m.recorded_at, m.basis, r.points, r.points_u, q.required,
			  exists (select from setting_aside x where x.measurement = m.id and x.recorded_at <= :known) as set_aside,
			  b.verdict as brought_verdict,
			  exists (select from revocation v where v.sign_off = b.id and v.recorded_at <= :known) as brought_revoked
			from measurement m
			join lateral (select points, points_u from reduction where measurement = m.id and recorded_at <= :known
			  order by version desc limit 1) r on true
			left join sign_off_requirement q on q.measurement = m.id and q.recorded_at <= :known
			left join sign_off b on b.own_measurement = m.id and b.recorded_at <= :known
			where m.tree = :tree and m.recorded_at <= :known""";

	private static final String SIGN_OFFS = """
			select s.measurement, s.verdict, s.own_measurement is not null as brought_own,
			  exists (select from revocation v where v.sign_off = s.id and v.recorded_at <= :known) as revoked
			from sign_off s join measurement m on m.id = s.measurement
			where m.tree = :tree and s.recorded_at <= :known""";

	private static final String CONDITIONS = """
			select c.condition, c.observed_on, coalesce(d.began_on, c.observed_on) as holds_from, d.recorded_at
			from condition_report c join condition_decision d on d.report = c.id
			where c.tree = :tree and d.accepted and d.recorded_at <= :known""";

	private final JdbcClient jdbc;

	TreeFactsReader(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * What is known at the instant of a tree that was in the register by then.
	 */
	PlacedTree read(UUID tree, Instant knownAt) {
		return ask(PLACE, tree, knownAt).query((row, number) -> placed(row, tree, knownAt)).single();
	}

	private PlacedTree placed(ResultSet row, UUID tree, Instant knownAt) throws SQLException {
		TreeFacts facts = new TreeFacts(tree, row.getBoolean("accepted"), measurements(tree, knownAt),
				conditions(tree, knownAt));
		BookKey book = row.getBoolean("genus_only") ? null
				: new BookKey(row.getString("stands_in"), row.getString("species"));
		return new PlacedTree(facts, book);
	}

	private List<Measured> measurements(UUID tree, Instant knownAt) {
		Map<UUID, List<SignedOff>> signOffs = signOffs(tree, knownAt);
		return ask(MEASUREMENTS, tree, knownAt).query((row, number) -> {
			UUID id = row.getObject("id", UUID.class);
			return new Measured(id, row.getObject("measured_on", LocalDate.class), SqlTime.get(row, "recorded_at"),
					score(row), "carried-over".equals(row.getString("basis")), row.getBoolean("set_aside"),
					bringer(row), row.getInt("required"), signOffs.getOrDefault(id, List.of()));
		}).list();
	}

	private Map<UUID, List<SignedOff>> signOffs(UUID tree, Instant knownAt) {
		record Given(UUID measurement, SignedOff signOff) {
		}
		return ask(SIGN_OFFS, tree, knownAt)
			.query((row, number) -> new Given(row.getObject("measurement", UUID.class),
					new SignedOff(verdict(row.getString("verdict")), row.getBoolean("brought_own"),
							row.getBoolean("revoked"))))
			.list()
			.stream()
			.collect(
					Collectors.groupingBy(Given::measurement, Collectors.mapping(Given::signOff, Collectors.toList())));
	}

	private List<Found> conditions(UUID tree, Instant knownAt) {
		return ask(CONDITIONS, tree, knownAt)
			.query((row, number) -> new Found(Condition.find(row.getString("condition")).orElseThrow(),
					row.getObject("observed_on", LocalDate.class), row.getObject("holds_from", LocalDate.class),
					SqlTime.get(row, "recorded_at")))
			.list();
	}

	private JdbcClient.StatementSpec ask(String sql, UUID tree, Instant knownAt) {
		return this.jdbc.sql(sql).param("tree", tree).param("known", SqlTime.of(knownAt));
	}

	private static @Nullable SignedOff bringer(ResultSet row) throws SQLException {
		String verdict = row.getString("brought_verdict");
		return (verdict != null) ? new SignedOff(verdict(verdict), true, row.getBoolean("brought_revoked")) : null;
	}

	static Verdict verdict(String word) {
		return switch (word) {
			case "confirmed" -> Verdict.CONFIRMED;
			case "corrected" -> Verdict.CORRECTED;
			case "not-confirmed" -> Verdict.NOT_CONFIRMED;
			default -> throw new IllegalStateException("No verdict is called " + word);
		};
	}

	static Score score(ResultSet row) throws SQLException {
		BigDecimal points = row.getBigDecimal("points");
		return new Score(Points.ofHundredths(points.movePointRight(2).intValueExact()),
				row.getBigDecimal("points_u").doubleValue());
	}

}

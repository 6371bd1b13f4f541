package county.bigtree.registry.standing;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

import county.bigtree.domain.measuring.FigureMethods;
import county.bigtree.domain.measuring.Method;
import county.bigtree.domain.points.Points;
import county.bigtree.domain.points.Score;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.rulebook.CarryForward;
import county.bigtree.domain.standing.Condition;
import county.bigtree.domain.standing.TreeFacts;
import county.bigtree.domain.standing.TreeFacts.Found;
import county.bigtree.domain.standing.TreeFacts.Measured;
import county.bigtree.domain.standing.TreeFacts.Ruled;
import county.bigtree.domain.standing.TreeFacts.SignedOff;
import county.bigtree.domain.standing.TreeFacts.Verdict;
import county.bigtree.domain.standing.VisitFigures;
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
			with family as materialized (select array(select tree_family(:tree, :known)) as trees)
			select ranked_as(i.species, :known) as species, s.genus_only, l.stands_in, f.trees as family,
			  exists (select from acceptance a where a.tree = any(f.trees) and a.recorded_at <= :known)
			    and coalesce((select eligible from eligibility where tree = :tree and recorded_at <= :known
			      order by recorded_at desc limit 1), true)
			    and not exists (select from taking_off where tree = :tree and recorded_at <= :known)
			    and not exists (select from merge m where m.tree = :tree and m.recorded_at <= :known
			      and not exists (select from merge_revocation r where r.merge = m.id and r.recorded_at <= :known))
			    as on_the_books
			from family f
			join lateral (select species from identification where tree = :tree and recorded_at <= :known
			  order by recorded_at desc limit 1) i on true
			join lateral (select stands_in from location where tree = :tree and recorded_at <= :known
			  order by recorded_at desc limit 1) l on true
			join species s on s.key = i.species""";

	/**
	 * The measurements of the trees: those filed for them and not given to another since,
	 * and those given to them last.
	 */
	private static final String OWN_MEASUREMENTS = """
			with own as (
			  select m.* from measurement m where m.tree in (:trees) and m.recorded_at <= :known
			    and not exists (select from assignment a where a.measurement = m.id and a.recorded_at <= :known)
			  union all
			  select m.* from assignment a join measurement m on m.id = a.measurement
			  where a.tree in (:trees) and a.recorded_at <= :known and not exists (select from assignment later
			    where later.measurement = m.id and later.recorded_at > a.recorded_at and later.recorded_at <= :known))
			""";

	private static final String MEASUREMENTS = OWN_MEASUREMENTS
			+ """
					select m.id, m.measured_on, m.recorded_at, m.basis, m.carry_height_years, m.carry_crown_years, r.*, q.required,
					  exists (select from setting_aside x where x.measurement = m.id and x.recorded_at <= :known) as set_aside,
					  b.verdict as brought_verdict, r.points is not null as brought_full,
					  exists (select from revocation v where v.sign_off = b.id and v.recorded_at <= :known) as brought_revoked,
					  m.readings #>> '{girth,method}' as girth_by, m.readings #>> '{height,method}' as height_by,
					  m.readings #>> '{crown,method}' as crown_by,
					  exists (select from sign_off_deferral w where w.sign_off = b.id and w.recorded_at <= :known)
					    and not exists (select from sign_off_assent y where y.sign_off = b.id and y.recorded_at <= :known)
					    as brought_waiting
					from own m
					join lateral (select girth_inches, girth_u, height_feet, height_u, crown_feet, crown_u, points, points_u
					  from reduction where measurement = m.id and recorded_at <= :known order by version desc limit 1) r on true
					left join sign_off_requirement q on q.measurement = m.id and q.recorded_at <= :known
					left join sign_off b on b.own_measurement = m.id and b.recorded_at <= :known""";

	private static final String SIGN_OFFS = OWN_MEASUREMENTS + """
			select s.measurement, s.verdict,
			  brought_full(s.own_measurement) as brought_own,
			  exists (select from revocation v where v.sign_off = s.id and v.recorded_at <= :known) as revoked,
			  exists (select from sign_off_deferral w where w.sign_off = s.id and w.recorded_at <= :known)
			    and not exists (select from sign_off_assent y where y.sign_off = s.id and y.recorded_at <= :known)
			    as waiting
			from sign_off s join own m on m.id = s.measurement
			where s.recorded_at <= :known""";

	private static final String CONDITIONS = """
			select c.condition, c.observed_on, coalesce(d.began_on, c.observed_on) as holds_from, d.recorded_at
			from condition_report c join condition_decision d on d.report = c.id
			where c.tree in (:trees) and d.accepted and d.recorded_at <= :known""";

	private static final String RULINGS = """
			select r.began_on, r.recorded_at,
			  array(select measurement from ruling_kept where ruling = r.id) as kept
			from stem_ruling r where r.tree in (:trees) and r.recorded_at <= :known""";

	private final JdbcClient jdbc;

	TreeFactsReader(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * What is known at the instant of a tree that was in the register by then.
	 */
	PlacedTree read(UUID tree, Instant knownAt) {
		return this.jdbc.sql(PLACE)
			.param("tree", tree)
			.param("known", SqlTime.of(knownAt))
			.query((row, number) -> placed(row, tree, knownAt))
			.single();
	}

	/**
	 * The tree into which this one is merged, by all that is known; itself where it is
	 * not merged.
	 */
	UUID keptTree(UUID tree) {
		return this.jdbc.sql("select kept_tree(?)").param(tree).query(UUID.class).single();
	}

	private PlacedTree placed(ResultSet row, UUID tree, Instant knownAt) throws SQLException {
		List<UUID> family = List.of((UUID[]) row.getArray("family").getArray());
		TreeFacts facts = new TreeFacts(tree, row.getBoolean("on_the_books"), measurements(family, knownAt),
				conditions(family, knownAt), rulings(family, knownAt));
		BookKey book = row.getBoolean("genus_only") ? null
				: new BookKey(row.getString("stands_in"), row.getString("species"));
		return new PlacedTree(facts, book);
	}

	private List<Measured> measurements(List<UUID> trees, Instant knownAt) {
		Map<UUID, List<SignedOff>> signOffs = signOffs(trees, knownAt);
		return ask(MEASUREMENTS, trees, knownAt).query((row, number) -> {
			UUID id = row.getObject("id", UUID.class);
			return new Measured(id, row.getObject("measured_on", LocalDate.class), SqlTime.get(row, "recorded_at"),
					figures(row), "carried-over".equals(row.getString("basis")), row.getBoolean("set_aside"),
					bringer(row), row.getInt("required"), signOffs.getOrDefault(id, List.of()));
		}).list();
	}

	private Map<UUID, List<SignedOff>> signOffs(List<UUID> trees, Instant knownAt) {
		record Given(UUID measurement, SignedOff signOff) {
		}
		return ask(SIGN_OFFS, trees, knownAt)
			.query((row, number) -> new Given(row.getObject("measurement", UUID.class),
					new SignedOff(verdict(row.getString("verdict")), row.getBoolean("brought_own"),
							row.getBoolean("revoked"), row.getBoolean("waiting"))))
			.list()
			.stream()
			.collect(
					Collectors.groupingBy(Given::measurement, Collectors.mapping(Given::signOff, Collectors.toList())));
	}

	private List<Found> conditions(List<UUID> trees, Instant knownAt) {
		return ask(CONDITIONS, trees, knownAt)
			.query((row, number) -> new Found(Condition.find(row.getString("condition")).orElseThrow(),
					row.getObject("observed_on", LocalDate.class), row.getObject("holds_from", LocalDate.class),
					SqlTime.get(row, "recorded_at")))
			.list();
	}

	private List<Ruled> rulings(List<UUID> trees, Instant knownAt) {
		return ask(RULINGS, trees, knownAt)
			.query((row, number) -> new Ruled(row.getObject("began_on", LocalDate.class),
					SqlTime.get(row, "recorded_at"), Set.of((UUID[]) row.getArray("kept").getArray())))
			.list();
	}

	private JdbcClient.StatementSpec ask(String sql, List<UUID> trees, Instant knownAt) {
		return this.jdbc.sql(sql).param("trees", trees).param("known", SqlTime.of(knownAt));
	}

	private static @Nullable SignedOff bringer(ResultSet row) throws SQLException {
		String verdict = row.getString("brought_verdict");
		return (verdict != null) ? new SignedOff(verdict(verdict), row.getBoolean("brought_full"),
				row.getBoolean("brought_revoked"), row.getBoolean("brought_waiting")) : null;
	}

	static Verdict verdict(String word) {
		return switch (word) {
			case "confirmed" -> Verdict.CONFIRMED;
			case "corrected" -> Verdict.CORRECTED;
			case "not-confirmed" -> Verdict.NOT_CONFIRMED;
			default -> throw new IllegalStateException("No verdict is called " + word);
		};
	}

	private static VisitFigures figures(ResultSet row) throws SQLException {
		return new VisitFigures(estimate(row, "girth_inches", "girth_u"), estimate(row, "height_feet", "height_u"),
				estimate(row, "crown_feet", "crown_u"), (row.getBigDecimal("points") != null) ? score(row) : null,
				new CarryForward(row.getInt("carry_height_years"), row.getInt("carry_crown_years")), methods(row));
	}

	static FigureMethods methods(ResultSet row) throws SQLException {
		return new FigureMethods(method(row.getString("girth_by")), method(row.getString("height_by")),
				method(row.getString("crown_by")));
	}

	static @Nullable Method method(@Nullable String code) {
		return (code == null) ? null
				: Method.find(code).orElseThrow(() -> new IllegalStateException("No method is called " + code));
	}

	private static @Nullable Estimate estimate(ResultSet row, String value, String uncertainty) throws SQLException {
		BigDecimal figure = row.getBigDecimal(value);
		return (figure != null) ? new Estimate(figure.doubleValue(), row.getBigDecimal(uncertainty).doubleValue())
				: null;
	}

	static Score score(ResultSet row) throws SQLException {
		BigDecimal points = row.getBigDecimal("points");
		return new Score(Points.ofHundredths(points.movePointRight(2).intValueExact()),
				row.getBigDecimal("points_u").doubleValue());
	}

}

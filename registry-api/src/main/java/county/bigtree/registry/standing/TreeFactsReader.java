package county.bigtree.registry.standing;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
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
import org.springframework.jdbc.core.RowMapper;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Reads the few facts on which a tree's scores depend, as known at an instant.
 */
@Component
class TreeFactsReader {

	private static final String PLACE = """
			with family as materialized (
			  select tree, array(select tree_family(tree, :known)) as trees from unnest(:trees) as asked (tree))
			select f.tree, ranked_as(i.species, :known) as species, s.genus_only, l.stands_in, f.trees as family,
			  exists (select from acceptance a where a.tree = any(f.trees) and a.recorded_at <= :known)
			    and coalesce((select eligible from eligibility where tree = f.tree and recorded_at <= :known
			      order by recorded_at desc limit 1), true)
			    and not exists (select from taking_off where tree = f.tree and recorded_at <= :known)
			    and not exists (select from merge m where m.tree = f.tree and m.recorded_at <= :known
			      and not exists (select from merge_revocation r where r.merge = m.id and r.recorded_at <= :known))
			    as on_the_books
			from family f
			join lateral (select species from identification where tree = f.tree and recorded_at <= :known
			  order by recorded_at desc limit 1) i on true
			join lateral (select stands_in from location where tree = f.tree and recorded_at <= :known
			  order by recorded_at desc limit 1) l on true
			join species s on s.key = i.species""";

	/**
	 * The measurements of the trees: those filed for them and not given to another since,
	 * and those given to them last.
	 */
	private static final String OWN_MEASUREMENTS = """
			with own as (
			  select m.*, m.tree as of_tree from measurement m where m.tree = any(:trees) and m.recorded_at <= :known
			    and not exists (select from assignment a where a.measurement = m.id and a.recorded_at <= :known)
			  union all
			  select m.*, a.tree as of_tree from assignment a join measurement m on m.id = a.measurement
			  where a.tree = any(:trees) and a.recorded_at <= :known and not exists (select from assignment later
			    where later.measurement = m.id and later.recorded_at > a.recorded_at and later.recorded_at <= :known))
			""";

	private static final String MEASUREMENTS = OWN_MEASUREMENTS
			+ """
					select m.of_tree, m.id, m.measured_on, m.recorded_at, m.basis, m.carry_height_years, m.carry_crown_years, r.*, q.required,
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
			select c.tree as of_tree, c.condition, c.observed_on, coalesce(d.began_on, c.observed_on) as holds_from, d.recorded_at
			from condition_report c join condition_decision d on d.report = c.id
			where c.tree = any(:trees) and d.accepted and d.recorded_at <= :known""";

	private static final String RULINGS = """
			select r.tree as of_tree, r.began_on, r.recorded_at,
			  array(select measurement from ruling_kept where ruling = r.id) as kept
			from stem_ruling r where r.tree = any(:trees) and r.recorded_at <= :known""";

	/**
	 * For one tree. Of an array of unknown length the database makes a plan each time.
	 */
	private static final String ONE = "array[:tree]::uuid[]";

	private final JdbcClient jdbc;

	TreeFactsReader(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * What is known at the instant of a tree that was in the register by then.
	 */
	PlacedTree read(UUID tree, Instant knownAt) {
		return Objects.requireNonNull(readAll(Set.of(tree), knownAt).get(tree), "The tree is not in the register");
	}

	/**
	 * The same of several trees of which none is merged into another, by as many
	 * statements as for one.
	 */
	Map<UUID, PlacedTree> readAll(Set<UUID> trees, Instant knownAt) {
		List<Placed> placed = ask(PLACE, trees, knownAt).query(TreeFactsReader::placed).list();
		Set<UUID> families = placed.stream().flatMap((one) -> one.family().stream()).collect(Collectors.toSet());
		Map<UUID, List<Measured>> measurements = measurements(families, knownAt);
		Map<UUID, List<Found>> conditions = of(CONDITIONS, families, knownAt, TreeFactsReader::found);
		Map<UUID, List<Ruled>> rulings = of(RULINGS, families, knownAt, TreeFactsReader::ruled);
		return placed.stream()
			.collect(Collectors.toMap(Placed::tree, (one) -> new PlacedTree(new TreeFacts(one.tree(), one.onTheBooks(),
					one.own(measurements), one.own(conditions), one.own(rulings)), one.book())));
	}

	/**
	 * The tree into which this one is merged, by all that is known; itself where it is
	 * not merged.
	 */
	UUID keptTree(UUID tree) {
		return this.jdbc.sql("select kept_tree(?)").param(tree).query(UUID.class).single();
	}

	/**
	 * The same of several trees, by tree.
	 */
	Map<UUID, UUID> keptTrees(Collection<UUID> trees) {
		return this.jdbc.sql("select tree, kept_tree(tree) as kept from unnest(?) asked (tree)")
			.param(trees.toArray(UUID[]::new))
			.query((row, number) -> Map.entry(row.getObject("tree", UUID.class), row.getObject("kept", UUID.class)))
			.list()
			.stream()
			.collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue, (one, other) -> one));
	}

	private static Placed placed(ResultSet row, int number) throws SQLException {
		BookKey book = row.getBoolean("genus_only") ? null
				: new BookKey(row.getString("stands_in"), row.getString("species"));
		return new Placed(row.getObject("tree", UUID.class), row.getBoolean("on_the_books"), book,
				List.of((UUID[]) row.getArray("family").getArray()));
	}

	private Map<UUID, List<Measured>> measurements(Set<UUID> trees, Instant knownAt) {
		Map<UUID, List<SignedOff>> signOffs = signOffs(trees, knownAt);
		return of(MEASUREMENTS, trees, knownAt, (row, number) -> {
			UUID id = row.getObject("id", UUID.class);
			return new Measured(id, row.getObject("measured_on", LocalDate.class), SqlTime.get(row, "recorded_at"),
					figures(row), "carried-over".equals(row.getString("basis")), row.getBoolean("set_aside"),
					bringer(row), row.getInt("required"), signOffs.getOrDefault(id, List.of()));
		});
	}

	private Map<UUID, List<SignedOff>> signOffs(Set<UUID> trees, Instant knownAt) {
		return by("measurement", SIGN_OFFS, trees, knownAt,
				(row, number) -> new SignedOff(verdict(row.getString("verdict")), row.getBoolean("brought_own"),
						row.getBoolean("revoked"), row.getBoolean("waiting")));
	}

	private static Found found(ResultSet row, int number) throws SQLException {
		return new Found(Condition.find(row.getString("condition")).orElseThrow(),
				row.getObject("observed_on", LocalDate.class), row.getObject("holds_from", LocalDate.class),
				SqlTime.get(row, "recorded_at"));
	}

	private static Ruled ruled(ResultSet row, int number) throws SQLException {
		return new Ruled(row.getObject("began_on", LocalDate.class), SqlTime.get(row, "recorded_at"),
				Set.of((UUID[]) row.getArray("kept").getArray()));
	}

	/** Facts by the tree that they were recorded of. */
	private <T> Map<UUID, List<T>> of(String sql, Set<UUID> trees, Instant knownAt, RowMapper<T> fact) {
		return by("of_tree", sql, trees, knownAt, fact);
	}

	private <T> Map<UUID, List<T>> by(String column, String sql, Set<UUID> trees, Instant knownAt, RowMapper<T> fact) {
		return ask(sql, trees, knownAt)
			.query((row, number) -> Map.entry(row.getObject(column, UUID.class), fact.mapRow(row, number)))
			.list()
			.stream()
			.collect(Collectors.groupingBy(Map.Entry::getKey,
					Collectors.mapping(Map.Entry::getValue, Collectors.toList())));
	}

	private JdbcClient.StatementSpec ask(String sql, Set<UUID> trees, Instant knownAt) {
		JdbcClient.StatementSpec asked = (trees.size() == 1)
				? this.jdbc.sql(sql.replace(":trees", ONE)).param("tree", trees.iterator().next())
				: this.jdbc.sql(sql).param("trees", trees.toArray(UUID[]::new));
		return asked.param("known", SqlTime.of(knownAt));
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

	/**
	 * A tree before its facts are read.
	 *
	 * @param family the tree and those merged into it
	 */
	private record Placed(UUID tree, boolean onTheBooks, @Nullable BookKey book, List<UUID> family) {

		<T> List<T> own(Map<UUID, List<T>> facts) {
			return this.family.stream().flatMap((one) -> facts.getOrDefault(one, List.of()).stream()).toList();
		}

	}

}

package county.bigtree.registry.lookup;

import county.bigtree.registry.people.Actor;
import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.registry.tree.TreeDirectory;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.domain.place.Position;
import county.bigtree.domain.place.Showing;
import county.bigtree.registry.disclosure.Showings;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Reads accepted trees. A tree is public only once it is accepted, and only while all its
 * owners let it be listed.
 */
@Service
public class ReadTrees {

	private static final String TREES = """
			select t.id, t.tag, t.file_tag, l.stands_in, i.species, l.latitude, l.longitude, l.accuracy_metres, l.shown,
			  w.*,
			  coalesce(c.condition, 'upright') as condition, s.measurement, s.points, s.points_u, s.measured_on, s.seen_on,
			  (select known_day(measured_on, measured_on_known_to) from measurement where id = s.measurement) as measured,
			  s.lost_on, s.carried_over, p.title, p.from_at,
			  (select count(*) from score o where o.county = s.county and o.species = s.species and o.withdrawn_at is null
			    and o.ends_on is null and o.points > s.points) + 1 as rank,
			  tree_revision(t.id) as revision, a.tree is not null as accepted,
			  n.nominator, case when n.filed_for is null then (select credit_name from person where id = n.nominator)
			    else (select body from text_body where id = n.credit) end as found_by,
			  (select b.body from older_record o join text_body b on b.id = o.popular_name where o.tree = t.id) as popular_name,
			  coalesce((select eligible from eligibility where tree = t.id order by recorded_at desc limit 1), true) as eligible, kept_tree(t.id) as kept
			from tree t
			left join acceptance a on a.tree = t.id
			left join nomination n on n.tree = t.id
			cross join lateral owners_consent(t.id, :now) w
			join lateral (select species from identification where tree = t.id order by recorded_at desc limit 1) i on true
			join lateral (select * from location where tree = t.id order by recorded_at desc limit 1) l on true
			left join lateral (select r.condition from condition_report r join condition_decision d on d.report = r.id
			  where r.tree = t.id and d.accepted and r.condition <> 'not-found'
			  order by coalesce(d.began_on, r.observed_on) desc, d.recorded_at desc limit 1) c on true
			left join score s on s.tree = t.id and s.withdrawn_at is null and s.ends_on is null
			left join title_span p on p.tree = t.id and p.to_at is null
			""";

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	ReadTrees(JdbcClient jdbc, RegisterClock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/**
	 * The tree with this id or tag, if the asker may see it: anyone once it is accepted
	 * and while it is listed, else who nominated it and the county's verifiers.
	 */
	@Transactional(readOnly = true)
	public Optional<TreeSummary> find(String idOrTag, @Nullable Actor actor) {
		return this.jdbc.sql(TREES + """
				where (t.tag = :tag or t.id = :id)
				  and not exists (select from taking_off where tree = t.id)""")
			.param("now", SqlTime.of(this.clock.now()))
			.param("tag", idOrTag)
			.param("id", TreeDirectory.asId(idOrTag).orElse(null), java.sql.Types.OTHER)
			.query((row, number) -> maySee(row, actor) ? Optional.of(summary(row, number))
					: Optional.<TreeSummary>empty())
			.list()
			.stream()
			.flatMap(Optional::stream)
			.findFirst();
	}

	private static boolean maySee(ResultSet row, @Nullable Actor actor) throws SQLException {
		return row.getBoolean("accepted") && Showings.of(row).listed()
				|| actor != null && (actor.isVerifierIn(row.getString("stands_in"))
						|| actor.id().equals(row.getObject("nominator", UUID.class)));
	}

	/**
	 * Public trees in the order of their tags. Which they are is asked first, so that
	 * what costs much is asked of few. Those not listed are passed over, as if they were
	 * not there.
	 * @param query only those whose popular name, or a name of whose species, holds this
	 * text, or whose tag begins with it
	 * @param after the last tag already seen, or the empty text
	 */
	@Transactional(readOnly = true)
	public List<TreeSummary> list(@Nullable String county, @Nullable String species, @Nullable String query,
			String after, int limit) {
		return this.jdbc
			.sql(TREES
					+ """
							where t.id = any(array(select d.id from (select c.id, c.tag from tree c
							    join lateral (select species from identification where tree = c.id order by recorded_at desc limit 1) k on true
							    join lateral (select stands_in from location where tree = c.id order by recorded_at desc limit 1) h on true
							  where c.tag > :after and (h.stands_in = :county
							      or cast(:county as text) is null and not (select practice from county where key = h.stands_in))
							    and (cast(:species as text) is null or k.species = :species)
							    and (cast(:query as text) is null or c.tag ilike :begins or k.species in (select species from species_name
							        where normalised like '%' || normalised_name(:query) || '%')
							      or exists (select from older_record o join text_body b on b.id = o.popular_name
							        where o.tree = c.id and b.body ilike :holds))
							    and exists (select from acceptance where tree = c.id)
							    and not exists (select from taking_off where tree = c.id)
							  order by c.tag offset 0) d
							  where kept_tree(d.id) = d.id and is_listed(d.id, :now) order by d.tag limit :limit))
							order by t.tag""")
			.param("now", SqlTime.of(this.clock.now()))
			.param("county", county, java.sql.Types.VARCHAR)
			.param("species", species, java.sql.Types.VARCHAR)
			.param("query", query, java.sql.Types.VARCHAR)
			.param("begins", (query != null) ? escaped(query) + "%" : null, java.sql.Types.VARCHAR)
			.param("holds", (query != null) ? "%" + escaped(query) + "%" : null, java.sql.Types.VARCHAR)
			.param("after", after)
			.param("limit", limit)
			.query(ReadTrees::summary)
			.list();
	}

	/**
	 * Those of these trees that the public may see, in the order of their tags.
	 */
	@Transactional(readOnly = true)
	public List<TreeSummary> of(Collection<UUID> trees) {
		return this.jdbc.sql(TREES
				+ "where t.id = any(:trees) and not exists (select from taking_off where tree = t.id) order by t.tag")
			.param("now", SqlTime.of(this.clock.now()))
			.param("trees", trees.toArray(UUID[]::new))
			.query(ReadTrees::summary)
			.list()
			.stream()
			.filter((tree) -> tree.accepted() && tree.listed())
			.toList();
	}

	private static String escaped(String text) {
		return text.replaceAll("([\\\\%_])", "\\\\$1");
	}

	private static TreeSummary summary(ResultSet row, int number) throws SQLException {
		Position exact = new Position(row.getDouble("latitude"), row.getDouble("longitude"),
				row.getDouble("accuracy_metres"));
		Showing showing = Showings.of(row);
		return new TreeSummary(row.getObject("id", UUID.class), row.getString("tag"), row.getString("file_tag"),
				row.getString("popular_name"), row.getString("stands_in"), row.getString("species"),
				row.getLong("revision"), showing.position(exact), row.getString("condition"),
				row.getObject("seen_on", LocalDate.class), standing(row), row.getString("title"),
				SqlTime.find(row, "from_at"), row.getBoolean("eligible"), row.getBoolean("accepted"),
				row.getObject("kept", UUID.class), showing.listed(), row.getString("found_by"));
	}

	private static TreeSummary.@Nullable Standing standing(ResultSet row) throws SQLException {
		UUID measurement = row.getObject("measurement", UUID.class);
		return (measurement == null) ? null
				: new TreeSummary.Standing(measurement, row.getBigDecimal("points"), row.getBigDecimal("points_u"),
						row.getObject("measured_on", LocalDate.class), KnownDay.parse(row.getString("measured")),
						row.getInt("rank"), row.getObject("lost_on", LocalDate.class) != null,
						row.getBoolean("carried_over"));
	}

}

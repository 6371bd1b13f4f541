package county.bigtree.registry.photo;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.registry.disclosure.Showings;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.problem.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The photos on record, but for those erased. Everybody may see one that was passed and
 * shows no sheet of paper, of a tree that is accepted, on the books and listed, all of
 * whose owners let photos be published: as of today, whatever day an answer is about.
 */
@Component
public class Photos {

	private static final String PHOTO = """
			select p.id, k.tree, t.tag, l.stands_in, l.shown, p.measurement, p.shows, p.taken_on, p.recorded_at, p.by_person,
			  w.credit_name, d.decision, o.*,
			  p.measurement is not null and measurement_counts(p.measurement) as measurement_counts,
			  (select b.body from text_body b where b.id = coalesce((select x.words from photo_decision x
			    where x.photo = p.id and x.words is not null order by x.recorded_at desc limit 1), p.words)) as words,
			  (select body from text_body where id = p.credit) as credit,
			  (select body from text_body where id = d.reason) as reason,
			  exists (select from acceptance where tree = k.tree)
			    and not exists (select from taking_off where tree = k.tree) as on_the_books,
			  (select count(*) from photo_decision where photo = p.id) + 1 as revision,
			  (select array_agg(width order by width) from photo_body where photo = p.id) as widths,
			  (select array_agg(height order by width) from photo_body where photo = p.id) as heights
			from photo p
			cross join lateral (select photo_tree(p.measurement, p.tree) as tree) k
			join tree t on t.id = k.tree
			join person w on w.id = p.by_person
			join lateral (select stands_in, shown from location where tree = k.tree order by recorded_at desc limit 1) l on true
			left join lateral (select decision, reason from photo_decision where photo = p.id
			  order by recorded_at desc limit 1) d on true
			cross join lateral owners_consent(k.tree, :now) o
			where not exists (select from photo_erasure where photo = p.id) and\s""";

	private static final String OF_TREE = """
			p.id in (select id from photo where tree in (select tree_family(:tree, 'infinity'))
			    union select n.id from photo n join assignment a on a.measurement = n.measurement
			    where a.tree in (select tree_family(:tree, 'infinity')))
			  and k.tree = kept_tree(:tree) order by p.recorded_at, p.id""";

	private static final String OF_COUNTY = """
			l.stands_in = :county and p.id > :after
			  and (cast(:status as text) is null or :status = case d.decision when 'pass' then 'passed'
			    when 'refuse' then 'refused' when 'withdraw' then 'withdrawn' else 'waiting' end)
			  and not exists (select from taking_off where tree = k.tree) order by p.id limit :limit""";

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	Photos(JdbcClient jdbc, RegisterClock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	public Optional<Photo> find(UUID id) {
		return ask("p.id = :id").param("id", id).query(Photos::photo).optional();
	}

	/**
	 * The photo with this id.
	 * @throws Problem of not being found
	 */
	public Photo get(UUID id) {
		return find(id).orElseThrow(Photos::unknown);
	}

	/**
	 * All photos of a tree, of those merged into it and of their measurements, the
	 * earliest first.
	 */
	public List<Photo> ofTree(UUID tree) {
		return ask(OF_TREE).param("tree", tree).query(Photos::photo).list();
	}

	/** Those that everybody may see. */
	public List<Photo> publishedOf(UUID tree) {
		return ofTree(tree).stream().filter(Photo::published).toList();
	}

	List<Photo> ofMeasurement(UUID measurement) {
		return ask("p.measurement = :measurement order by p.recorded_at, p.id").param("measurement", measurement)
			.query(Photos::photo)
			.list();
	}

	List<Photo> by(UUID person, UUID after, int limit) {
		return ask("p.by_person = :person and p.id > :after order by p.id limit :limit").param("person", person)
			.param("after", after)
			.param("limit", limit)
			.query(Photos::photo)
			.list();
	}

	/** In the order in which they were sent. */
	List<Photo> ofCounty(String county, @Nullable String status, UUID after, int limit) {
		return ask(OF_COUNTY).param("county", county)
			.param("status", status, Types.VARCHAR)
			.param("after", after)
			.param("limit", limit)
			.query(Photos::photo)
			.list();
	}

	static Problem unknown() {
		return Problem.notFound("No photo has this id.");
	}

	private JdbcClient.StatementSpec ask(String condition) {
		return this.jdbc.sql(PHOTO + condition).param("now", SqlTime.of(this.clock.now()));
	}

	private static Photo photo(ResultSet row, int number) throws SQLException {
		Shows shows = Shows.find(row.getString("shows")).orElseThrow();
		String status = status(row.getString("decision"));
		boolean listed = Showings.of(row).listed();
		boolean published = status.equals(Decision.PASS.to()) && shows.isForAll() && row.getBoolean("on_the_books")
				&& listed && Showings.consentOf(row).allowsPhotos();
		return new Photo(row.getObject("id", UUID.class), row.getObject("tree", UUID.class), row.getString("tag"),
				row.getString("stands_in"), row.getObject("measurement", UUID.class),
				row.getBoolean("measurement_counts"), shows, row.getObject("taken_on", LocalDate.class),
				SqlTime.get(row, "recorded_at"), row.getObject("by_person", UUID.class), row.getString("credit_name"),
				row.getString("words"), row.getString("credit"), status, row.getString("reason"), listed, published,
				sizes(row), row.getLong("revision"));
	}

	private static String status(@Nullable String decision) {
		return (decision == null) ? Decision.TAKE_BACK.to() : Decision.find(decision).orElseThrow().to();
	}

	private static List<Photo.Size> sizes(ResultSet row) throws SQLException {
		Integer[] widths = (Integer[]) row.getArray("widths").getArray();
		Integer[] heights = (Integer[]) row.getArray("heights").getArray();
		List<Photo.Size> sizes = new ArrayList<>();
		for (int index = 0; index < widths.length; index++) {
			sizes.add(new Photo.Size(widths[index], heights[index]));
		}
		return sizes;
	}

}

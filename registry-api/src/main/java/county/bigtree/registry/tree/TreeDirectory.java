package county.bigtree.registry.tree;

import java.util.Optional;
import java.util.UUID;

import county.bigtree.registry.problem.Problem;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Finds trees by id or tag, accepted or not, for those who work on them.
 */
@Component
public class TreeDirectory {

	private static final String TREE = """
			select t.id, t.tag, l.stands_in as county, i.species,
			  exists (select from acceptance a where a.tree = t.id) as accepted,
			  (select count(*) from identification where tree = t.id) + (select count(*) from location where tree = t.id)
			    + (select count(*) from acceptance where tree = t.id) as revision
			from tree t
			join lateral (select species from identification where tree = t.id order by recorded_at desc limit 1) i on true
			join lateral (select stands_in from location where tree = t.id order by recorded_at desc limit 1) l on true
			""";

	private final JdbcClient jdbc;

	TreeDirectory(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * The tree with this id or tag.
	 */
	public Optional<KnownTree> find(String idOrTag) {
		return this.jdbc.sql(TREE + "where t.tag = :address or t.id::text = :address")
			.param("address", idOrTag)
			.query(KnownTree.class)
			.optional();
	}

	/**
	 * The tree with this id or tag.
	 * @throws Problem of not being found
	 */
	public KnownTree get(String idOrTag) {
		return find(idOrTag).orElseThrow(() -> Problem.notFound("No tree has this id or tag."));
	}

	public KnownTree get(UUID id) {
		return get(id.toString());
	}

	/**
	 * A tree on the books.
	 *
	 * @param county the county in which it stands
	 * @param species what it is identified as
	 * @param revision raised by facts of the tree itself
	 */
	public record KnownTree(UUID id, String tag, String county, String species, boolean accepted, long revision) {
	}

}

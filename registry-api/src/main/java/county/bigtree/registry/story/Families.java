package county.bigtree.registry.story;

import java.util.Set;
import java.util.UUID;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Trees with all that is merged into them.
 */
@Component
class Families {

	private final JdbcClient jdbc;

	Families(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	Set<UUID> of(UUID tree) {
		return Set.copyOf(this.jdbc.sql("select tree_family(?, 'infinity')").param(tree).query(UUID.class).list());
	}

	/**
	 * Whether the tree, or one merged into it, came on the books, and was not taken off.
	 */
	boolean onTheBooks(UUID tree) {
		return this.jdbc.sql("""
				select exists (select from acceptance where tree in (select tree_family(:tree, 'infinity')))
				  and not exists (select from taking_off where tree = :tree)""")
			.param("tree", tree)
			.query(Boolean.class)
			.single();
	}

}

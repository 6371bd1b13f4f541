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
	 * The tree into which one is merged, all the way; itself where it is not.
	 */
	UUID kept(UUID tree) {
		return this.jdbc.sql("select kept_tree(?)").param(tree).query(UUID.class).single();
	}

}

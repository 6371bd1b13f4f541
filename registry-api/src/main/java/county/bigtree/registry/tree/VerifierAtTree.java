package county.bigtree.registry.tree;

import java.util.UUID;

import county.bigtree.registry.people.Actor;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Knows who may act as a verifier at a tree now: the verifiers of the county where it
 * stands, and the guest for whom a visit to it was planned there, until something came of
 * that visit or the tree went to another county or off the books.
 */
@Component
public class VerifierAtTree {

	private static final String GUEST = """
			select exists (select from visit v where v.verifier = :person and v.tree = :tree and v.county = :county and v.guest
			  and not exists (select from visit_outcome where visit = v.id)
			  and not exists (select from taking_off where tree = v.tree))""";

	private final JdbcClient jdbc;

	VerifierAtTree(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * Whether the actor may act as one.
	 * @param county where the tree stands
	 */
	public boolean may(Actor actor, String county, UUID tree) {
		return actor.isVerifierIn(county) || !actor.filesOnly() && isGuest(actor.id(), county, tree);
	}

	private boolean isGuest(UUID person, String county, UUID tree) {
		return this.jdbc.sql(GUEST)
			.param("person", person)
			.param("tree", tree)
			.param("county", county)
			.query(Boolean.class)
			.single();
	}

}

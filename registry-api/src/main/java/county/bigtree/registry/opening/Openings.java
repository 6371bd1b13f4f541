package county.bigtree.registry.opening;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.people.Actor;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Notes who opened what, and tells it. The note belongs to the transaction that reads:
 * where it can't be written, nothing is shown.
 */
@Service
public class Openings {

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	Openings(JdbcClient jdbc, RegisterClock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/**
	 * Notes that the actor now opens it.
	 * @param tree the tree that it concerns, if any
	 * @param subject the one owner, nomination, letter or proposal, if it is one
	 */
	@Transactional(propagation = Propagation.MANDATORY)
	public void note(Actor actor, String county, @Nullable UUID tree, Opened what, @Nullable UUID subject) {
		this.jdbc.sql("""
				insert into opening (id, county, opened_at, person, what, tree, subject)
				values (:id, :county, :at, :person, :what, :tree, :subject)""")
			.param("id", Uuid7.next())
			.param("county", county)
			.param("at", SqlTime.of(this.clock.now()))
			.param("person", actor.id())
			.param("what", what.code())
			.param("tree", tree, java.sql.Types.OTHER)
			.param("subject", subject, java.sql.Types.OTHER)
			.update();
	}

	/**
	 * Notes that the actor now opens the same of many trees.
	 * @param countyByTree the county that notes it, for each tree
	 */
	@Transactional(propagation = Propagation.MANDATORY)
	public void note(Actor actor, Map<UUID, String> countyByTree, Opened what) {
		List<UUID> trees = List.copyOf(countyByTree.keySet());
		this.jdbc.sql("""
				insert into opening (id, county, opened_at, person, what, tree)
				select o.id, o.county, :at, :person, :what, o.tree
				from unnest(:ids, :counties, :trees) as o (id, county, tree)""")
			.param("ids", trees.stream().map((tree) -> Uuid7.next()).toArray(UUID[]::new))
			.param("counties", trees.stream().map(countyByTree::get).toArray(String[]::new))
			.param("trees", trees.toArray(UUID[]::new))
			.param("at", SqlTime.of(this.clock.now()))
			.param("person", actor.id())
			.param("what", what.code())
			.update();
	}

	/**
	 * What was opened of a county, the latest first.
	 * @param before only what was noted before the one with this id
	 */
	@Transactional(readOnly = true)
	public List<Opening> of(String county, @Nullable UUID before, int limit) {
		return this.jdbc.sql("""
				select o.id, o.opened_at, o.person, p.credit_name as who, o.what, o.tree, t.tag, o.subject
				from opening o left join person p on p.id = o.person left join tree t on t.id = o.tree
				where o.county = :county and (cast(:before as uuid) is null or o.id < :before)
				order by o.id desc limit :limit""")
			.param("county", county)
			.param("before", before, java.sql.Types.OTHER)
			.param("limit", limit)
			.query(Opening.class)
			.list();
	}

	/**
	 * That somebody opened something.
	 *
	 * @param who the name under which the person is credited
	 * @param what owners, place, older-record, filed-for or letter
	 * @param subject the one owner, nomination, letter or proposal, if it was one
	 */
	public record Opening(UUID id, Instant openedAt, UUID person, @Nullable String who, String what,
			@Nullable UUID tree, @Nullable String tag, @Nullable UUID subject) {
	}

}

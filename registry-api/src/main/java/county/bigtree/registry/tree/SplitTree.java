package county.bigtree.registry.tree;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.function.LongConsumer;

import county.bigtree.domain.place.Disclosure;
import county.bigtree.domain.standing.TitleReason;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.owner.RecordOwner;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * One entry that was two trees: some of its measurements go to a new one.
 */
@Service
public class SplitTree {

	private final TreeDecisions decisions;

	private final RegisterTree register;

	private final RecordOwner owners;

	private final JdbcClient jdbc;

	SplitTree(TreeDecisions decisions, RegisterTree register, RecordOwner owners, JdbcClient jdbc) {
		this.owners = owners;
		this.decisions = decisions;
		this.register = register;
		this.jdbc = jdbc;
	}

	/**
	 * Splits a tree and answers the new one's id. A measurement goes with all that
	 * verifiers brought for it.
	 * @param unchanged told the tree's revision under the lock; refuses a stale one
	 */
	@Transactional
	public UUID split(Actor actor, String idOrTag, SplitBody body, LongConsumer unchanged) {
		TreeDirectory.KnownTree tree = this.decisions.get(actor, idOrTag);
		Change change = this.decisions.open(tree, unchanged);
		Set<UUID> moving = moving(tree.id(), body.measurements());
		UUID other = this.register.register(change);
		this.register.identify(change, other, (body.species() != null) ? body.species() : tree.species(), "record",
				null);
		this.register.locate(change, other, tree.county(), body.location(), Disclosure.COUNTY, null, null);
		if (tree.accepted()) {
			this.register.accept(change, other, "signed-off");
		}
		this.decisions.append(change, FactTable.SPLIT, actor, body.reason(), "id", Uuid7.next(), "tree", tree.id(),
				"new_tree", other);
		this.owners.split(change, tree.id(), other);
		moving.forEach((measurement) -> this.decisions.append(change, FactTable.ASSIGNMENT, "id", Uuid7.next(),
				"measurement", measurement, "tree", other));
		this.decisions.close(change, "split", actor, List.of(tree.id(), other), TitleReason.SPLIT);
		return other;
	}

	/**
	 * The measurements named, and those brought for one of them or for which one was
	 * brought.
	 */
	private Set<UUID> moving(UUID tree, List<UUID> named) {
		Set<UUID> all = new LinkedHashSet<>(this.jdbc.sql("""
				with recursive moving as (
				  select m.id from measurement m where m.id in (:named)
				    and kept_tree(measurement_tree(m.id, m.tree)) = :tree
				  union
				  select case when s.measurement = m.id then s.own_measurement else s.measurement end
				  from moving m join sign_off s on m.id in (s.measurement, s.own_measurement)
				  where s.own_measurement is not null)
				select id from moving""").param("named", named).param("tree", tree).query(UUID.class).list());
		if (!all.containsAll(named)) {
			throw Problem.invalid("#/measurements", "unknown", "must all be measurements of this tree");
		}
		return all;
	}

}

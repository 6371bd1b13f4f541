package county.bigtree.registry.tree;

import java.util.function.LongConsumer;

import county.bigtree.domain.place.Disclosure;
import county.bigtree.domain.standing.TitleReason;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.standing.Standings;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Corrects what a tree is or where it stands.
 */
@Service
public class CorrectTree {

	private final Journal journal;

	private final TreeDirectory trees;

	private final ChangeAtTree changes;

	private final RegisterTree register;

	private final Standings standings;

	private final CountyLine line;

	private final JdbcClient jdbc;

	CorrectTree(Journal journal, TreeDirectory trees, ChangeAtTree changes, RegisterTree register, Standings standings,
			CountyLine line, JdbcClient jdbc) {
		this.line = line;
		this.journal = journal;
		this.trees = trees;
		this.changes = changes;
		this.register = register;
		this.standings = standings;
		this.jdbc = jdbc;
	}

	/**
	 * Corrects an identification: the standings of both species recompute.
	 * @param unchanged told the tree's revision under the lock; refuses a stale one
	 */
	@Transactional
	public void identify(Actor actor, String idOrTag, String species, String basis, String reason,
			LongConsumer unchanged) {
		TreeDirectory.KnownTree tree = this.trees.get(idOrTag);
		requireCoordinator(actor, tree.county());
		Change change = this.changes.open(tree);
		unchanged.accept(this.trees.get(tree.id()).revision());
		this.register.identify(change, tree.id(), species, basis, reason);
		this.standings.refresh(change, tree.id(), TitleReason.RE_IDENTIFIED);
		this.journal.close(change, "re-identified", actor.id());
	}

	/**
	 * Corrects a location, perhaps into another county, of which the actor must be
	 * coordinator too.
	 * @param unchanged told the tree's revision under the lock; refuses a stale one
	 */
	@Transactional
	public void locate(Actor actor, String idOrTag, PlaceBody place, @Nullable String county, String reason,
			LongConsumer unchanged) {
		TreeDirectory.KnownTree tree = this.trees.get(idOrTag);
		String standsIn = (county != null) ? county : tree.county();
		requireCoordinator(actor, tree.county());
		requireCoordinator(actor, standsIn);
		Change change = this.changes.open(tree, standsIn);
		unchanged.accept(this.trees.get(tree.id()).revision());
		relocate(change, tree, standsIn, place, reason);
		this.journal.close(change, "relocated", actor.id());
	}

	/**
	 * Says how much of a tree's place the public is shown from now on: no more than its
	 * owners allow.
	 * @param unchanged told the tree's revision under the lock; refuses a stale one
	 */
	@Transactional
	public void show(Actor actor, String idOrTag, Disclosure shown, String reason, LongConsumer unchanged) {
		TreeDirectory.KnownTree tree = this.trees.get(idOrTag);
		requireCoordinator(actor, tree.county());
		Change change = this.changes.open(tree);
		unchanged.accept(this.trees.get(tree.id()).revision());
		this.trees.requireOwnersAllow(tree.id(), shown);
		PlaceBody place = this.jdbc.sql(
				"select latitude, longitude, accuracy_metres from location where tree = ? order by recorded_at desc limit 1")
			.param(tree.id())
			.query((row, number) -> new PlaceBody(row.getDouble("latitude"), row.getDouble("longitude"),
					row.getDouble("accuracy_metres")))
			.single();
		this.register.locate(change, tree.id(), tree.county(), place, shown, null, reason);
		this.journal.close(change, "visibility-set", actor.id());
	}

	/**
	 * Puts the tree there, under a change that holds the heads of both counties.
	 */
	void relocate(Change change, TreeDirectory.KnownTree tree, String standsIn, PlaceBody place,
			@Nullable String reason) {
		this.line.requireMayCross(tree.id(), tree.county(), standsIn, change.today(standsIn));
		this.register.locate(change, tree.id(), standsIn, place, shown(tree), null, reason);
		this.standings.refresh(change, tree.id(), TitleReason.RELOCATED);
	}

	private Disclosure shown(TreeDirectory.KnownTree tree) {
		return Disclosure
			.find(this.jdbc.sql("select shown from location where tree = ? order by recorded_at desc limit 1")
				.param(tree.id())
				.query(String.class)
				.single())
			.orElse(Disclosure.COUNTY);
	}

	private static void requireCoordinator(Actor actor, String county) {
		if (!actor.isCoordinatorOf(county)) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Only a coordinator of the county may correct this.");
		}
	}

}

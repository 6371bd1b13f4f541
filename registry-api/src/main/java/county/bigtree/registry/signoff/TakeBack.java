package county.bigtree.registry.signoff;

import java.util.UUID;
import java.util.function.LongConsumer;

import county.bigtree.domain.standing.TitleReason;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.measurement.ReadMeasurements;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.standing.Standings;
import county.bigtree.registry.tree.ChangeAtTree;
import county.bigtree.registry.tree.TreeDirectory;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Takes back what counted: revokes a sign-off, or sets a measurement aside. Nothing is
 * deleted, everything recomputes.
 */
@Service
public class TakeBack {

	private final Journal journal;

	private final Recorder recorder;

	private final SignOffs signOffs;

	private final ReadMeasurements measurements;

	TakeBack(Journal journal, Recorder recorder, SignOffs signOffs, ReadMeasurements measurements) {
		this.journal = journal;
		this.recorder = recorder;
		this.signOffs = signOffs;
		this.measurements = measurements;
	}

	/**
	 * Revokes a sign-off.
	 * @param unchanged told its revision under the lock; refuses a stale one
	 */
	@Transactional
	public void revoke(Actor actor, UUID signOff, String reason, LongConsumer unchanged) {
		UUID tree = this.signOffs.get(signOff).tree();
		Change change = open(actor, tree);
		SignOffs.SignOff present = this.signOffs.get(signOff);
		this.recorder.requireStill(tree, present.tree());
		unchanged.accept(present.revision());
		if (present.revoked()) {
			throw Problem.of(ProblemType.CONFLICT, "This sign-off is revoked already.");
		}
		this.recorder.append(change, FactTable.REVOCATION, "sign_off", signOff, actor, reason);
		this.recorder.refresh(change, tree, TitleReason.REVOKED);
		this.journal.close(change, "revoked", actor.id());
	}

	/**
	 * Sets a measurement aside.
	 * @param unchanged told its revision under the lock; refuses a stale one
	 */
	@Transactional
	public void setAside(Actor actor, UUID measurement, String reason, LongConsumer unchanged) {
		UUID tree = this.measurements.get(measurement).tree();
		Change change = open(actor, tree);
		ReadMeasurements.Measurement present = this.measurements.get(measurement);
		this.recorder.requireStill(tree, present.tree());
		unchanged.accept(present.revision());
		if (present.status().equals("set-aside")) {
			throw Problem.of(ProblemType.CONFLICT, "This measurement is set aside already.");
		}
		this.recorder.append(change, FactTable.SETTING_ASIDE, "measurement", measurement, actor, reason);
		this.recorder.refresh(change, tree, TitleReason.SET_ASIDE);
		this.journal.close(change, "set-aside", actor.id());
	}

	private Change open(Actor actor, UUID id) {
		TreeDirectory.KnownTree tree = this.recorder.tree(id);
		if (!actor.isCoordinatorOf(tree.county())) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Only a coordinator of the county may do this.");
		}
		return this.recorder.open(tree);
	}

	/**
	 * Appends the fact and lets the standings follow.
	 */
	@org.springframework.stereotype.Component
	static class Recorder {

		private final Facts facts;

		private final Texts texts;

		private final Standings standings;

		private final TreeDirectory trees;

		private final ChangeAtTree changes;

		Recorder(Facts facts, Texts texts, Standings standings, TreeDirectory trees, ChangeAtTree changes) {
			this.facts = facts;
			this.texts = texts;
			this.standings = standings;
			this.trees = trees;
			this.changes = changes;
		}

		TreeDirectory.KnownTree tree(UUID id) {
			return this.trees.get(id);
		}

		Change open(TreeDirectory.KnownTree tree) {
			return this.changes.openAnyhow(tree);
		}

		void requireStill(UUID tree, UUID now) {
			this.changes.requireStill(this.trees.get(tree), now);
		}

		void append(Change change, FactTable table, String column, UUID what, Actor actor, String reason) {
			this.facts.append(change, table, column, what, "by_person", actor.id(), "reason",
					this.texts.keep(change, reason));
		}

		void refresh(Change change, UUID tree, TitleReason reason) {
			this.standings.refresh(change, tree, reason);
		}

	}

}

package county.bigtree.registry.measurement;

import java.util.Optional;
import java.util.UUID;
import java.util.function.LongConsumer;

import county.bigtree.registry.people.AssignedWork;
import county.bigtree.registry.people.Verifiers;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.tree.ChangeAtTree;
import county.bigtree.registry.tree.TreeDirectory;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Moves a filed remeasurement on its way to a sign-off. A nomination's own measurement
 * goes with the nomination.
 */
@Service
public class MoveMeasurement {

	private final ReadMeasurements measurements;

	private final TreeDirectory trees;

	private final ChangeAtTree changes;

	private final Recorder recorder;

	private final JdbcClient jdbc;

	private final Verifiers verifiers;

	MoveMeasurement(ReadMeasurements measurements, TreeDirectory trees, ChangeAtTree changes, Recorder recorder,
			Verifiers verifiers, JdbcClient jdbc) {
		this.verifiers = verifiers;
		this.measurements = measurements;
		this.trees = trees;
		this.changes = changes;
		this.recorder = recorder;
		this.jdbc = jdbc;
	}

	/**
	 * Makes a move.
	 * @param unchanged told the measurement's revision under the lock; refuses a stale
	 * one
	 */
	@Transactional
	public void move(Actor actor, UUID id, MeasurementMove move, @Nullable UUID verifier, @Nullable String reason,
			LongConsumer unchanged) {
		TreeDirectory.KnownTree tree = this.trees.get(this.measurements.get(id).tree());
		Change change = this.changes.openAnyhow(tree);
		ReadMeasurements.Measurement measurement = this.measurements.get(id);
		unchanged.accept(measurement.revision());
		requireOnItsOwn(id, measurement);
		requireMay(actor, move, measurement, tree.county());
		if (!move.from().contains(measurement.status())) {
			throw Problem.of(ProblemType.CONFLICT,
					"The move %s is not for a measurement that is %s.".formatted(move.code(), measurement.status()));
		}
		if (move.needsReason() && (reason == null || reason.isBlank())) {
			throw Problem.invalid("#/reason", "missing", "say why");
		}
		this.recorder.append(change, id, move, assigned(move, verifier, tree.county()), actor, reason);
		this.recorder.journal.close(change, "measurement-" + move.code(), actor.id());
	}

	private void requireOnItsOwn(UUID id, ReadMeasurements.Measurement measurement) {
		boolean nominations = this.jdbc.sql("select exists (select from nomination where measurement = ?)")
			.param(id)
			.query(Boolean.class)
			.single();
		if (nominations || !measurement.basis().equals(Basis.FILED.word())) {
			throw Problem.of(ProblemType.CONFLICT, nominations ? "This measurement came with a nomination: move that."
					: "Only a filed measurement is moved.");
		}
	}

	private void requireMay(Actor actor, MeasurementMove move, ReadMeasurements.Measurement measurement,
			String county) {
		boolean may = switch (move) {
			case ASSIGN, REASSIGN -> actor.isCoordinatorOf(county);
			case HAND_BACK -> assignee(measurement.id()).filter(actor.id()::equals).isPresent();
			case WITHDRAW, REOPEN -> measurement.filedBy().equals(actor.id());
		};
		if (!may) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "The move " + move.code() + " is not yours to make.");
		}
	}

	private Optional<UUID> assignee(UUID measurement) {
		return this.jdbc.sql("""
				select verifier from (select verifier from measurement_move where measurement = ?
				  order by recorded_at desc limit 1) m where verifier is not null""")
			.param(measurement)
			.query(UUID.class)
			.optional();
	}

	private @Nullable UUID assigned(MeasurementMove move, @Nullable UUID verifier, String county) {
		return move.assigns() ? this.verifiers.require(verifier, county) : null;
	}

	/**
	 * Appends the move.
	 */
	@org.springframework.stereotype.Component
	static class Recorder {

		private final Facts facts;

		private final Texts texts;

		private final Journal journal;

		Recorder(Facts facts, Texts texts, Journal journal) {
			this.facts = facts;
			this.texts = texts;
			this.journal = journal;
		}

		/** By someone else, of what they can't do any more. */
		void handBack(Change change, UUID measurement, AssignedWork.Leaving leaving) {
			MeasurementMove move = MeasurementMove.HAND_BACK;
			this.facts.append(change, FactTable.MEASUREMENT_MOVE, "id", Uuid7.next(), "measurement", measurement,
					"move", move.code(), "to_status", move.to(), "verifier", null, "by_person", leaving.by(), "reason",
					this.texts.keep(change, leaving.reason()));
			this.journal.close(change, "measurement-" + move.code(), leaving.by());
		}

		void append(Change change, UUID measurement, MeasurementMove move, @Nullable UUID verifier, Actor actor,
				@Nullable String reason) {
			this.facts.append(change, FactTable.MEASUREMENT_MOVE, "id", Uuid7.next(), "measurement", measurement,
					"move", move.code(), "to_status", move.to(), "verifier", verifier, "by_person", actor.id(),
					"reason", this.texts.keep(change, reason));
		}

	}

}

package county.bigtree.registry.signoff;

import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.LongConsumer;

import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.measurement.ReadMeasurements;
import county.bigtree.registry.nomination.NominationBook;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.tree.TreeDirectory;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * A coordinator's yes to a sign-off that would change who holds a title: from then on it
 * does what it says. There is no no: a sign-off that should do nothing is revoked.
 */
@Service
public class AssentToTitle {

	private final SignOffs signOffs;

	private final Judging judging;

	private final ReadMeasurements measurements;

	private final GiveSignOff.Acceptance acceptance;

	private final Texts texts;

	AssentToTitle(SignOffs signOffs, Judging judging, ReadMeasurements measurements, GiveSignOff.Acceptance acceptance,
			Texts texts) {
		this.signOffs = signOffs;
		this.judging = judging;
		this.measurements = measurements;
		this.acceptance = acceptance;
		this.texts = texts;
	}

	/**
	 * Says yes.
	 * @param unchanged told the sign-off's revision under the lock; refuses a stale one
	 * @throws Problem where the coordinator found, measured or owns the tree, or the
	 * sign-off waits for nobody
	 */
	@Transactional
	public void assent(Actor actor, UUID id, @Nullable String reason, LongConsumer unchanged) {
		UUID measured = this.signOffs.get(id).measurement();
		TreeDirectory.KnownTree tree = this.acceptance.tree(this.measurements.get(measured).tree());
		if (!actor.isCoordinatorOf(tree.county())) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Only a coordinator of the county may do this.");
		}
		Change change = this.acceptance.openAnyhow(tree);
		SignOffs.SignOff signOff = this.signOffs.get(id);
		unchanged.accept(signOff.revision());
		requireWaiting(signOff);
		ReadMeasurements.Measurement measurement = this.measurements.get(measured);
		this.acceptance.requireStill(tree, measurement.tree());
		Optional<NominationBook.Nomination> nomination = this.acceptance.nomination(tree);
		Judging.requireIndependent(actor,
				this.acceptance.interested(actor, tree, nomination, this.measurements.measurers(measurement, actor)),
				Set.of());
		this.judging.assent(change, id, actor, this.texts.keep(change, reason));
		UUID own = signOff.ownMeasurement();
		boolean counts = own != null && this.judging.counts(own) || this.judging.counts(measured);
		this.acceptance.afterSignOff(change, actor, tree, nomination, counts, this.signOffs.unrevokedSigners(measured));
		this.acceptance.close(change, "title-assented", actor);
	}

	private void requireWaiting(SignOffs.SignOff signOff) {
		String status = this.measurements.get(signOff.measurement()).status();
		if (!signOff.waitsForCoordinator()) {
			throw Problem.of(ProblemType.CONFLICT, "This sign-off waits for nobody.");
		}
		if (signOff.revoked() || status.equals("set-aside") || status.equals("withdrawn")) {
			throw Problem.of(ProblemType.CONFLICT,
					"This sign-off was %s.".formatted(signOff.revoked() ? "revoked" : "on figures since " + status));
		}
	}

}

package county.bigtree.registry.signoff;

import county.bigtree.domain.review.Mover;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

import county.bigtree.domain.measuring.Reduced;
import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.domain.review.Agreement;
import county.bigtree.domain.review.Interested;
import county.bigtree.domain.review.MoveDecision;
import county.bigtree.domain.review.NominationMove;
import county.bigtree.domain.review.NominationMoves;
import county.bigtree.domain.review.NominationStatus;
import county.bigtree.domain.review.PersonId;
import county.bigtree.domain.review.SignOffRules;
import county.bigtree.domain.review.Verdict;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.standing.TitleReason;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.measurement.Basis;
import county.bigtree.registry.measurement.MeasurementBody;
import county.bigtree.registry.measurement.ReadMeasurements;
import county.bigtree.registry.nomination.MoveNomination;
import county.bigtree.registry.nomination.NominationBook;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.Role;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.standing.Standings;
import county.bigtree.registry.tree.RegisterTree;
import county.bigtree.registry.tree.ChangeAtTree;
import county.bigtree.registry.tree.TreeDirectory;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Gives a sign-off on a measurement. Once a measurement counts, its tree is accepted and
 * ranked, in the same transaction.
 */
@Service
public class GiveSignOff {

	private final SignOffs signOffs;

	private final Judging judging;

	private final ReadMeasurements measurements;

	private final OwnReadings own;

	private final Acceptance acceptance;

	GiveSignOff(SignOffs signOffs, Judging judging, ReadMeasurements measurements, OwnReadings own,
			Acceptance acceptance) {
		this.signOffs = signOffs;
		this.judging = judging;
		this.measurements = measurements;
		this.own = own;
		this.acceptance = acceptance;
	}

	/**
	 * Gives it and answers its id.
	 * @throws Problem where the signer is not independent, or the verdict does not fit
	 * the figures
	 */
	@Transactional
	public UUID give(Actor actor, UUID id, SignOffBody body) {
		TreeDirectory.KnownTree tree = this.acceptance.tree(this.measurements.treeOf(id));
		this.acceptance.requireVerifier(actor, tree);
		Change change = this.acceptance.open(tree);
		this.acceptance.requireVerifier(actor, tree);
		ReadMeasurements.Measurement measurement = this.measurements.get(id);
		this.acceptance.requireStill(tree, measurement.tree());
		if (!measurement.basis().equals(Basis.FILED.word())) {
			throw Problem.of(ProblemType.REFUSED, "Only a filed measurement is signed off on.");
		}
		Set<PersonId> earlier = this.signOffs.unrevokedSigners(id);
		Optional<NominationBook.Nomination> nomination = this.acceptance.nomination(tree);
		Judging.requireIndependent(actor,
				this.acceptance.interested(actor, tree, nomination, this.measurements.measurers(measurement, actor)),
				earlier);
		String status = measurement.status();
		if (status.equals("set-aside") || status.equals("withdrawn")) {
			throw Problem.of(ProblemType.CONFLICT, "This measurement was " + status.replace('-', ' ') + ".");
		}
		Rulebook rulebook = this.judging.rulesOf(change, tree.county(), measurement.measuredOn());
		Agreement agreement = requireVerdictStands(body, measurement, tree, rulebook);
		requireInTime(actor, change, tree.county(), measurement, body);
		this.judging.required(change, measurement, rulebook);
		UUID own = this.own.record(change, actor, tree.id(), body.measurement());
		UUID signOff = this.signOffs.append(change, id, actor.id(), body, own, agreement);
		this.judging.requirePhotos(change, measurement, own, body.verdict().equals(Verdict.CONFIRMED.code()), rulebook);
		boolean counts = own != null && this.judging.counts(own) || this.judging.counts(id);
		boolean waits = this.judging.defer(change, signOff, tree.id(), counts,
				actor.isCoordinatorOf(tree.county()) ? actor : null);
		this.acceptance.afterSignOff(change, actor, tree, nomination, counts && !waits, earlier);
		this.acceptance.close(change, "signed-off", actor);
		return signOff;
	}

	/**
	 * A sign-off, for the verifiers of the county where the tree stands, and for whoever
	 * gave it.
	 */
	@Transactional(readOnly = true)
	public SignOffs.SignOff read(Actor actor, UUID id) {
		boolean own = !actor.filesOnly() && this.signOffs.isGivenBy(id, actor.id());
		if (!own && !actor.isAnywhere(Role.VERIFIER)) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Your roles do not include this.");
		}
		SignOffs.SignOff signOff = this.signOffs.get(id);
		if (!own && !actor.isVerifierIn(this.acceptance.tree(signOff.tree()).county())) {
			throw Problem.notFound("No sign-off has this id.");
		}
		return signOff;
	}

	/**
	 * The sign-offs on the measurements of a tree, for the same.
	 */
	@Transactional(readOnly = true)
	public List<SignOffs.SignOff> list(Actor actor, String idOrTag) {
		TreeDirectory.KnownTree tree = this.acceptance.trees.getShown(idOrTag, actor);
		if (!actor.isVerifierIn(tree.county())) {
			throw Problem.of(ProblemType.NOT_ALLOWED, "Sign-offs are for the verifiers of the county.");
		}
		return this.signOffs.ofTree(tree.id());
	}

	/**
	 * What was filed too long after its day counts only by a coordinator's word; so does
	 * a measurement that the signer brings.
	 */
	private void requireInTime(Actor actor, Change change, String county, ReadMeasurements.Measurement filed,
			SignOffBody body) {
		MeasurementBody own = body.measurement();
		KnownDay ownDay = (own != null) ? own.measuredOn() : null;
		boolean late = (own != null)
				? ownDay != null && this.judging.late(change, county, ownDay.last(), change.recordedAt())
				: body.verdict().equals(Verdict.CONFIRMED.code())
						&& this.judging.late(change, county, filed.measuredOn(), filed.recordedAt());
		if (late && !actor.isCoordinatorOf(county)) {
			throw Problem.of(ProblemType.REFUSED,
					"This was filed so long after its day that it counts only by a coordinator's sign-off.");
		}
	}

	private Agreement requireVerdictStands(SignOffBody body, ReadMeasurements.Measurement filed,
			TreeDirectory.KnownTree tree, Rulebook rulebook) {
		Verdict verdict = Verdict.find(body.verdict()).orElseThrow();
		Reduced checked = OwnReadings.reduced(body.measurement());
		Agreement agreement = this.own.agreement(filed, body.measurement(), checked, tree, rulebook.tolerances());
		SignOffRules.verdictStands(verdict, filed.reduced(), checked, rulebook.checkReadingsRequired(), agreement)
			.ifPresent((refusal) -> {
				throw MoveNomination.refused(refusal);
			});
		return agreement;
	}

	/**
	 * What a sign-off means to the nomination, the tree and the standings.
	 */
	@org.springframework.stereotype.Component
	static class Acceptance {

		private final NominationBook book;

		private final TreeDirectory trees;

		private final ChangeAtTree changes;

		private final RegisterTree register;

		private final Standings standings;

		Acceptance(NominationBook book, TreeDirectory trees, ChangeAtTree changes, RegisterTree register,
				Standings standings) {
			this.book = book;
			this.trees = trees;
			this.changes = changes;
			this.register = register;
			this.standings = standings;
		}

		TreeDirectory.KnownTree tree(UUID id) {
			return this.trees.get(id);
		}

		/**
		 * What came of a guest's visit may be told meanwhile: asked once more under the
		 * lock.
		 */
		void requireVerifier(Actor actor, TreeDirectory.KnownTree tree) {
			if (!this.trees.mayVerify(actor, tree)) {
				throw Problem.of(ProblemType.NOT_ALLOWED,
						"Only a verifier of the county, or the guest of an open visit to the tree, may sign off.");
			}
		}

		Change open(TreeDirectory.KnownTree tree) {
			return this.changes.open(tree);
		}

		Change openAnyhow(TreeDirectory.KnownTree tree) {
			return this.changes.openAnyhow(tree);
		}

		void requireStill(TreeDirectory.KnownTree tree, UUID now) {
			this.changes.requireStill(tree, now);
		}

		void close(Change change, String kind, Actor actor) {
			this.changes.close(change, kind, actor.id());
		}

		Optional<NominationBook.Nomination> nomination(TreeDirectory.KnownTree tree) {
			return this.book.ofTree(tree.id());
		}

		/**
		 * What the actor has to do with a tree and those who measured it.
		 */
		Interested interested(Actor actor, TreeDirectory.KnownTree tree, Optional<NominationBook.Nomination> nomination,
				Set<PersonId> measurers) {
			PersonId person = new PersonId(actor.id());
			boolean found = nomination.filter((one) -> this.book.isFoundBy(actor, one)).isPresent();
			return new Interested(found ? person : null, measurers,
					this.trees.isOwnedBy(actor, tree.id()) ? Set.of(person) : Set.of());
		}

		void afterSignOff(Change change, Actor actor, TreeDirectory.KnownTree tree,
				Optional<NominationBook.Nomination> nomination, boolean accepted, Set<PersonId> earlier) {
			nomination.filter((one) -> one.state() != NominationStatus.ACCEPTED)
				.ifPresent((one) -> review(change, actor, one, accepted, earlier));
			if (accepted && !tree.accepted()) {
				this.register.accept(change, tree.id(), "signed-off");
			}
			this.standings.refresh(change, tree.id(), TitleReason.SIGNED_OFF);
		}

		/**
		 * A refusal tells how the nomination stands: a rival may just have decided it.
		 */
		private static void decided(MoveDecision decision, String status) {
			if (decision instanceof MoveDecision.Refused refused) {
				throw MoveNomination.refused(refused.refusal()).with("present", Map.of("status", status));
			}
		}

		/**
		 * Once the assigned verifier has had their say, the further sign-offs that the
		 * county asks for are any verifier's to give. A guest was sent to this tree by a
		 * coordinator, as who is assigned.
		 */
		private Set<Mover> signer(Actor actor, NominationBook.Nomination nomination, Set<PersonId> earlier) {
			Set<Mover> signer = EnumSet.noneOf(Mover.class);
			signer.addAll(this.book.movers(actor, nomination));
			if (!actor.isVerifierIn(nomination.county())) {
				signer.add(Mover.ASSIGNED_VERIFIER);
			}
			UUID assigned = nomination.verifier();
			if (signer.contains(Mover.OTHER_VERIFIER) && assigned != null && earlier.contains(new PersonId(assigned))) {
				signer.add(Mover.ASSIGNED_VERIFIER);
			}
			return signer;
		}

		private void review(Change change, Actor actor, NominationBook.Nomination nomination, boolean accepted,
				Set<PersonId> earlier) {
			decided(NominationMoves.takeForSignOff(nomination.state(), signer(actor, nomination, earlier)),
					nomination.status());
			NominationBook.Nomination reviewed = (nomination.state() == NominationStatus.SUBMITTED)
					? this.book.move(change, nomination, NominationMove.ASSIGN.code(), NominationStatus.UNDER_REVIEW,
							actor.id(), actor.id(), null)
					: nomination;
			if (accepted) {
				this.book.move(change, reviewed, NominationMove.ACCEPT.code(), NominationStatus.ACCEPTED, actor.id(),
						reviewed.verifier(), null);
			}
		}

	}

}

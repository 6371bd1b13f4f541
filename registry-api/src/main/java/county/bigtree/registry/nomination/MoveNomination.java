package county.bigtree.registry.nomination;

import java.time.LocalDate;
import java.util.UUID;
import java.util.function.LongConsumer;

import county.bigtree.registry.people.Verifiers;
import county.bigtree.registry.tree.TreeDirectory;
import county.bigtree.registry.tree.ChangeAtTree;
import county.bigtree.domain.review.AnswerTime;
import county.bigtree.domain.review.MoveDecision;
import county.bigtree.domain.review.NominationMove;
import county.bigtree.domain.review.NominationMoves;
import county.bigtree.domain.review.NominationStatus;
import county.bigtree.domain.review.Refusal;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Moves a nomination along the graph of its states.
 */
@Service
public class MoveNomination {

	private final Journal journal;

	private final NominationBook book;

	private final TreeDirectory trees;

	private final ChangeAtTree changes;

	private final Verifiers verifiers;

	MoveNomination(Journal journal, NominationBook book, TreeDirectory trees, ChangeAtTree changes,
			Verifiers verifiers) {
		this.journal = journal;
		this.book = book;
		this.trees = trees;
		this.changes = changes;
		this.verifiers = verifiers;
	}

	/**
	 * Makes a move, in the county where the tree stands now.
	 * @param verifier who is to verify, for assign and reassign
	 * @param unchanged told the nomination's revision under the lock; refuses a stale one
	 */
	@Transactional
	public void move(Actor actor, UUID id, NominationMove move, @Nullable UUID verifier, @Nullable String reason,
			LongConsumer unchanged) {
		Change change = this.changes.openAnyhow(this.trees.get(this.book.get(id).tree()));
		NominationBook.Nomination nomination = this.book.get(id);
		unchanged.accept(nomination.revision());
		NominationStatus to = decided(
				NominationMoves.decide(nomination.state(), move, this.book.movers(actor, nomination)));
		if (move == NominationMove.LAPSE) {
			requireUnanswered(nomination, change);
		}
		if (move.needsReason() && (reason == null || reason.isBlank())) {
			throw Problem.invalid("#/reason", "missing", "say why");
		}
		this.book.move(change, nomination, move.code(), to, actor.id(), assigned(move, nomination, verifier), reason);
		this.journal.close(change, "nomination-" + move.code(), actor.id());
	}

	private static void requireUnanswered(NominationBook.Nomination nomination, Change change) {
		LocalDate lapsesOn = nomination.lapsesOn();
		if (lapsesOn == null) {
			throw Problem.of(ProblemType.CONFLICT, "Its nominator has not been reminded yet.");
		}
		AnswerTime.mayLapse(lapsesOn, change.today(nomination.county())).ifPresent((refusal) -> {
			throw refused(refusal);
		});
	}

	/**
	 * Where an allowed move leads.
	 * @throws Problem saying why a move is refused
	 */
	public static NominationStatus decided(MoveDecision decision) {
		if (decision instanceof MoveDecision.Moved moved) {
			return moved.to();
		}
		throw refused(((MoveDecision.Refused) decision).refusal());
	}

	/**
	 * The problem that a refusal makes.
	 */
	public static Problem refused(Refusal refusal) {
		return Problem.of(switch (refusal.ground()) {
			case NOT_NOW -> ProblemType.CONFLICT;
			case NOT_YOURS -> ProblemType.NOT_ALLOWED;
			case NOT_ENOUGH -> ProblemType.REFUSED;
		}, refusal.detail());
	}

	private @Nullable UUID assigned(NominationMove move, NominationBook.Nomination nomination,
			@Nullable UUID verifier) {
		return (move == NominationMove.ASSIGN || move == NominationMove.REASSIGN)
				? this.verifiers.require(verifier, nomination.county()) : null;
	}

}

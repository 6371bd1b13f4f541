package county.bigtree.domain.review;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import county.bigtree.domain.review.MoveDecision.Moved;
import county.bigtree.domain.review.MoveDecision.Refused;
import county.bigtree.domain.review.Refusal.Ground;

/**
 * The moves that exist for a nomination, each with who may make it. There are no others.
 */
public final class NominationMoves {

	private static final Set<Mover> COORDINATOR = EnumSet.of(Mover.COORDINATOR);

	private static final Set<Mover> NOMINATOR = EnumSet.of(Mover.NOMINATOR);

	private static final Set<Mover> ASSIGNED = EnumSet.of(Mover.ASSIGNED_VERIFIER);

	private static final Set<Mover> ASSIGNED_OR_COORDINATOR = EnumSet.of(Mover.ASSIGNED_VERIFIER, Mover.COORDINATOR);

	private static final Set<Mover> ANY_VERIFIER = EnumSet.of(Mover.ASSIGNED_VERIFIER, Mover.OTHER_VERIFIER,
			Mover.COORDINATOR);

	private static final List<Edge> GRAPH = List.of(
			edge(NominationStatus.SUBMITTED, NominationMove.ASSIGN, NominationStatus.UNDER_REVIEW, COORDINATOR),
			edge(NominationStatus.SUBMITTED, NominationMove.DECLINE, NominationStatus.DECLINED, COORDINATOR),
			edge(NominationStatus.SUBMITTED, NominationMove.RETURN, NominationStatus.RETURNED, COORDINATOR),
			edge(NominationStatus.SUBMITTED, NominationMove.WITHDRAW, NominationStatus.WITHDRAWN, NOMINATOR),
			edge(NominationStatus.UNDER_REVIEW, NominationMove.REASSIGN, NominationStatus.UNDER_REVIEW, COORDINATOR),
			edge(NominationStatus.UNDER_REVIEW, NominationMove.HAND_BACK, NominationStatus.SUBMITTED, ASSIGNED),
			edge(NominationStatus.UNDER_REVIEW, NominationMove.ACCEPT, NominationStatus.ACCEPTED,
					ASSIGNED_OR_COORDINATOR),
			edge(NominationStatus.UNDER_REVIEW, NominationMove.DECLINE, NominationStatus.DECLINED, COORDINATOR),
			edge(NominationStatus.UNDER_REVIEW, NominationMove.RETURN, NominationStatus.RETURNED,
					ASSIGNED_OR_COORDINATOR),
			edge(NominationStatus.UNDER_REVIEW, NominationMove.WITHDRAW, NominationStatus.WITHDRAWN, NOMINATOR),
			edge(NominationStatus.RETURNED, NominationMove.ANSWER, NominationStatus.SUBMITTED, NOMINATOR),
			edge(NominationStatus.RETURNED, NominationMove.WITHDRAW, NominationStatus.WITHDRAWN, NOMINATOR),
			edge(NominationStatus.RETURNED, NominationMove.LAPSE, NominationStatus.DECLINED,
					EnumSet.of(Mover.SYSTEM, Mover.COORDINATOR)),
			edge(NominationStatus.DECLINED, NominationMove.REOPEN, NominationStatus.SUBMITTED, COORDINATOR),
			edge(NominationStatus.WITHDRAWN, NominationMove.REOPEN, NominationStatus.SUBMITTED,
					EnumSet.of(Mover.NOMINATOR, Mover.COORDINATOR)));

	private NominationMoves() {
	}

	/** By everything that the mover is to this nomination; nothing for a stranger. */
	public static MoveDecision decide(NominationStatus from, NominationMove move, Set<Mover> mover) {
		Optional<Edge> edge = GRAPH.stream().filter((each) -> each.from == from && each.move == move).findFirst();
		if (edge.isEmpty()) {
			return refused(Ground.NOT_NOW,
					"This nomination is " + from.code() + ": the move " + move.code() + " is not possible now.");
		}
		if (mover.stream().noneMatch(edge.get().by::contains)) {
			return refused(Ground.NOT_YOURS, "The move " + move.code() + " is not yours to make.");
		}
		return new Moved(edge.get().to);
	}

	/**
	 * Where a nomination stands once somebody begins to sign off on its measurement. What
	 * nobody is assigned to is assigned to the signer first; what is accepted stays so,
	 * and may get the further sign-offs that the county asks for.
	 */
	public static MoveDecision takeForSignOff(NominationStatus from, Set<Mover> signer) {
		return switch (from) {
			case SUBMITTED -> taken(NominationStatus.UNDER_REVIEW, signer, ANY_VERIFIER);
			case UNDER_REVIEW -> taken(from, signer, ASSIGNED_OR_COORDINATOR);
			case ACCEPTED -> taken(from, signer, ANY_VERIFIER);
			case RETURNED, DECLINED, WITHDRAWN ->
				refused(Ground.NOT_NOW, "A nomination that is " + from.code() + " can't be signed off.");
		};
	}

	private static MoveDecision taken(NominationStatus to, Set<Mover> signer, Set<Mover> who) {
		if (signer.stream().anyMatch(who::contains)) {
			return new Moved(to);
		}
		return refused(Ground.NOT_YOURS,
				who.contains(Mover.OTHER_VERIFIER) ? "Only a verifier or a coordinator of the county can sign off."
						: "Only the verifier assigned to it, or a coordinator, can sign off.");
	}

	private static Refused refused(Ground ground, String detail) {
		return new Refused(new Refusal(ground, detail));
	}

	private static Edge edge(NominationStatus from, NominationMove move, NominationStatus to, Set<Mover> by) {
		return new Edge(from, move, to, by);
	}

	private record Edge(NominationStatus from, NominationMove move, NominationStatus to, Set<Mover> by) {
	}

}

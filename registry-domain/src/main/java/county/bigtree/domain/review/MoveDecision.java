package county.bigtree.domain.review;

/**
 * The answer to a move: where the nomination stands after it, or why not.
 */
public sealed interface MoveDecision {

	/** The move may be made. */
	record Moved(NominationStatus to) implements MoveDecision {
	}

	/** It may not, and nothing changes. */
	record Refused(Refusal refusal) implements MoveDecision {
	}

}

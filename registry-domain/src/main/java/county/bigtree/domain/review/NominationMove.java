package county.bigtree.domain.review;

import java.util.Arrays;
import java.util.Optional;

/**
 * What can be done with a nomination. The code is what JSON writes.
 */
public enum NominationMove {

	/** A verifier is put to work on it. */
	ASSIGN("assign", false),

	/** Another verifier is. */
	REASSIGN("reassign", false),

	/** The verifier gives it back undecided. */
	HAND_BACK("hand-back", false),

	/** More information is asked of the nominator: what is asked is the reason. */
	RETURN("return", true),

	/** The nominator gives what was asked. */
	ANSWER("answer", false),

	/** What was asked was not given in time. */
	LAPSE("lapse", false),

	/** Taken on the books: what a sign-off brings about, never asked for by itself. */
	ACCEPT("accept", false),

	/** Not taken on the books. */
	DECLINE("decline", true),

	/** Taken back by its nominator. */
	WITHDRAW("withdraw", false),

	/** Taken up again. */
	REOPEN("reopen", false);

	private final String code;

	private final boolean needsReason;

	NominationMove(String code, boolean needsReason) {
		this.code = code;
		this.needsReason = needsReason;
	}

	public String code() {
		return this.code;
	}

	/** Whether those concerned can't do without being told why. */
	public boolean needsReason() {
		return this.needsReason;
	}

	public static Optional<NominationMove> find(String code) {
		return Arrays.stream(values()).filter((move) -> move.code.equals(code)).findFirst();
	}

}

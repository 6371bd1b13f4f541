package county.bigtree.domain.review;

import java.util.Arrays;
import java.util.Optional;

/**
 * Where a nomination stands. The code is what JSON writes.
 */
public enum NominationStatus {

	/** Filed, and nobody is at work on it yet. */
	SUBMITTED("submitted"),

	/** A verifier is assigned. */
	UNDER_REVIEW("under-review"),

	/** More information is asked of the nominator. */
	RETURNED("returned"),

	/** Taken on the books, which is a decision and stays. */
	ACCEPTED("accepted"),

	/** Not taken; may be reopened. */
	DECLINED("declined"),

	/** Taken back by its nominator; may be reopened. */
	WITHDRAWN("withdrawn");

	private final String code;

	NominationStatus(String code) {
		this.code = code;
	}

	public String code() {
		return this.code;
	}

	public static Optional<NominationStatus> find(String code) {
		return Arrays.stream(values()).filter((status) -> status.code.equals(code)).findFirst();
	}

}

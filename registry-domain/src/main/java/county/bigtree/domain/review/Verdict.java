package county.bigtree.domain.review;

import java.util.Arrays;
import java.util.Optional;

/**
 * What a verifier says of a measurement. The code is what JSON writes.
 */
public enum Verdict {

	/** It agrees. */
	CONFIRMED("confirmed"),

	/** The verifier's own figures are used. */
	CORRECTED("corrected"),

	/** Neither; the coordinator decides. */
	NOT_CONFIRMED("not-confirmed");

	private final String code;

	Verdict(String code) {
		this.code = code;
	}

	public String code() {
		return this.code;
	}

	public static Optional<Verdict> find(String code) {
		return Arrays.stream(values()).filter((verdict) -> verdict.code.equals(code)).findFirst();
	}

}

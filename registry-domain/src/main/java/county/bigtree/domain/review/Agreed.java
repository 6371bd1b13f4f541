package county.bigtree.domain.review;

/**
 * Whether a checked figure bears out the filed one. The code is what JSON writes.
 */
public enum Agreed {

	/** By tolerance and by uncertainty. */
	AGREES("agrees"),

	/** By neither. */
	DISAGREES("disagrees"),

	/** By one and not by the other: look again at both. */
	LOOK_AGAIN("look-again");

	private final String code;

	Agreed(String code) {
		this.code = code;
	}

	public String code() {
		return this.code;
	}

}

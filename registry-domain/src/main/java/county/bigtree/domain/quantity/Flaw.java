package county.bigtree.domain.quantity;

/**
 * What is wrong with a figure that is refused. Each has a stable code for programs.
 */
public enum Flaw {

	/** Needed, and not given. */
	MISSING("missing"),

	/** Not a finite number. */
	NOT_A_NUMBER("not-a-number"),

	/** Zero or less, where only more than zero makes sense. */
	NOT_POSITIVE("not-positive"),

	/** Outside the range in which the figure has a meaning. */
	OUT_OF_RANGE("out-of-range"),

	/** Fewer or more items than the method takes. */
	WRONG_COUNT("wrong-count"),

	/** Two entries that can't both hold, or are given where one is wanted. */
	CONTRADICTION("contradiction");

	private final String code;

	Flaw(String code) {
		this.code = code;
	}

	public String code() {
		return this.code;
	}

}

package county.bigtree.registry.opening;

/**
 * What private things are opened. The code is what JSON writes.
 */
public enum Opened {

	/** Names and contacts of owners. */
	OWNERS("owners"),

	/** The exact place of a tree, and how to find it. */
	PLACE("place"),

	/** The private words of an older record. */
	OLDER_RECORD("older-record"),

	/** Name and contact of somebody for whom a nomination was filed. */
	FILED_FOR("filed-for"),

	/** A letter and how to reach who wrote it. */
	LETTER("letter");

	private final String code;

	Opened(String code) {
		this.code = code;
	}

	String code() {
		return this.code;
	}

}

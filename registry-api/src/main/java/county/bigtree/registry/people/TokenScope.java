package county.bigtree.registry.people;

import java.util.Locale;

/**
 * What a token is good for, at most.
 */
public enum TokenScope {

	/** Reads what its owner may read. */
	READ,
	/** Reads and files as a volunteer would, whatever higher roles its owner holds. */
	FILE,
	/** Whatever its owner may do. */
	ALL;

	/** As in JSON and in the database. */
	public String code() {
		return name().toLowerCase(Locale.ROOT);
	}

	static TokenScope ofCode(String code) {
		return valueOf(code.toUpperCase(Locale.ROOT));
	}

}

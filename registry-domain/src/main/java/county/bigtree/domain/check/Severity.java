package county.bigtree.domain.check;

/**
 * What a finding asks of whoever files. The code is what JSON writes.
 */
public enum Severity {

	/** Is told and kept; asks nothing. */
	NOTE("note"),

	/** Must be answered, "yes, I checked", before the filing is taken. */
	QUESTION("question"),

	/** Can't be true, and is refused. */
	STOP("stop");

	private final String code;

	Severity(String code) {
		this.code = code;
	}

	public String code() {
		return this.code;
	}

}

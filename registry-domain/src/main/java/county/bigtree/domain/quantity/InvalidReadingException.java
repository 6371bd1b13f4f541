package county.bigtree.domain.quantity;

/**
 * A reading that can't be taken as it stands. Names the entry at fault by its path within
 * the reading, as the reading is written in JSON ({@code axes/1/value}; empty for the
 * reading as a whole), says what range was wanted and what was found.
 */
public final class InvalidReadingException extends IllegalArgumentException {

	private final String path;

	private final Flaw flaw;

	private final String detail;

	public InvalidReadingException(String path, Flaw flaw, String detail) {
		super(path.isEmpty() ? detail : path + ": " + detail);
		this.path = path;
		this.flaw = flaw;
		this.detail = detail;
	}

	public String path() {
		return this.path;
	}

	public Flaw flaw() {
		return this.flaw;
	}

	public String code() {
		return this.flaw.code();
	}

	public String detail() {
		return this.detail;
	}

	/** The same refusal seen from the outside, where the reading is one entry of many. */
	public InvalidReadingException within(String field) {
		String outer = this.path.isEmpty() ? field : field + "/" + this.path;
		InvalidReadingException moved = new InvalidReadingException(outer, this.flaw, this.detail);
		moved.initCause(this);
		return moved;
	}

}

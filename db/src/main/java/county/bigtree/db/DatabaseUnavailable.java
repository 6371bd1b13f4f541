package county.bigtree.db;

/**
 * The database can't be opened. The message is one plain sentence that says what is wrong
 * and what to do; it is meant to be printed as it is, without the stack trace.
 */
public class DatabaseUnavailable extends RuntimeException {

	public DatabaseUnavailable(String sentence) {
		super(sentence);
	}

	public DatabaseUnavailable(String sentence, Throwable cause) {
		super(sentence, cause);
	}

}

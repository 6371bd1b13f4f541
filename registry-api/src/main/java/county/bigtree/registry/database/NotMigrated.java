package county.bigtree.registry.database;

/**
 * Why the schema was not changed, in a sentence for who starts the service.
 */
public final class NotMigrated extends RuntimeException {

	private static final long serialVersionUID = 1L;

	public NotMigrated(String sentence, Throwable cause) {
		super(sentence, cause);
	}

}

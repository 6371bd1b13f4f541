package county.bigtree.registry.photo.store;

/**
 * The object store did not do what was asked of it: it can't be reached, is too slow,
 * refuses, or too many ask at once.
 */
public class StoreAway extends RuntimeException {

	StoreAway(String message) {
		super(message);
	}

	StoreAway(String message, Throwable cause) {
		super(message, cause);
	}

}

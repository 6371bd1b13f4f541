package county.bigtree.registry.journal;

import java.security.SecureRandom;
import java.util.UUID;

/**
 * Identifiers in order of their making (UUID version 7, RFC 9562 5.7).
 */
public final class Ids {

	private static final SecureRandom RANDOM = new SecureRandom();

	private Ids() {
	}

	/**
	 * A new identifier of the present millisecond.
	 */
	public static UUID next() {
		long millis = System.currentTimeMillis();
		long high = (millis << 16) | 0x7000L | (RANDOM.nextInt() & 0x0fffL);
		long low = (RANDOM.nextLong() & 0x3fffffffffffffffL) | 0x8000000000000000L;
		return new UUID(high, low);
	}

}

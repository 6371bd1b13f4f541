package county.bigtree.registry.journal;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/**
 * A change as the journal keeps it: JSON bytes, and the SHA-256 of the hash before it
 * followed by the digest of those bytes, which is their SHA-256. Who has the digests
 * alone can follow the chain.
 */
record Entry(byte[] bytes, byte[] hash) {

	static Entry after(byte[] chain, String json) {
		byte[] bytes = json.getBytes(StandardCharsets.UTF_8);
		return new Entry(bytes, chained(chain, bytes));
	}

	/** The hash of an entry that follows the hash before it. */
	static byte[] chained(byte[] chain, byte[] bytes) {
		return hash(chain, sha256().digest(bytes));
	}

	static byte[] hash(byte[] first, byte[] bytes) {
		MessageDigest digest = sha256();
		digest.update(first);
		return digest.digest(bytes);
	}

	private static MessageDigest sha256() {
		try {
			return MessageDigest.getInstance("SHA-256");
		}
		catch (NoSuchAlgorithmException ex) {
			throw new IllegalStateException("Every Java platform has SHA-256", ex);
		}
	}

}

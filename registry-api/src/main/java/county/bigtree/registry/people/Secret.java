package county.bigtree.registry.people;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;

/**
 * A secret made here and shown once: a prefix that tells what it is, and 256 random bits.
 * Only its SHA-256 is kept, which needs no salt, because nobody can try all secrets.
 */
final class Secret {

	private static final SecureRandom random = new SecureRandom();

	private static final int BYTES = 32;

	private Secret() {
	}

	static String make(String prefix) {
		byte[] bytes = new byte[BYTES];
		random.nextBytes(bytes);
		return prefix + Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
	}

	static byte[] hash(String secret) {
		try {
			return MessageDigest.getInstance("SHA-256").digest(secret.getBytes(StandardCharsets.UTF_8));
		}
		catch (NoSuchAlgorithmException ex) {
			throw new IllegalStateException("Every Java platform has SHA-256", ex);
		}
	}

}

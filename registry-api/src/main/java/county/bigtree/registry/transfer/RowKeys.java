package county.bigtree.registry.transfer;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Tells the rows of one file apart, in such a way that the same row of the same file gets
 * the same key whenever it comes: by the entry of a column, or by the SHA-256 digest of
 * all cells with the number of times that this content has come before.
 */
final class RowKeys {

	private final Map<String, Integer> occurrences = new HashMap<>();

	private final Set<String> seen = new HashSet<>();

	/** By the entry of a column; empty where an earlier row had it. */
	Optional<String> named(String entry) {
		return this.seen.add(entry) ? Optional.of("key:" + entry) : Optional.empty();
	}

	String digest(List<String> cells) {
		MessageDigest digest = sha256();
		for (String cell : cells) {
			byte[] bytes = cell.getBytes(StandardCharsets.UTF_8);
			// With its length, so that no two rows of cells run together alike.
			digest.update((bytes.length + ":").getBytes(StandardCharsets.UTF_8));
			digest.update(bytes);
		}
		String content = HexFormat.of().formatHex(digest.digest());
		return "sha256:" + content + ":" + this.occurrences.merge(content, 1, Integer::sum);
	}

	private static MessageDigest sha256() {
		try {
			return MessageDigest.getInstance("SHA-256");
		}
		catch (NoSuchAlgorithmException ex) {
			throw new IllegalStateException("every Java platform has SHA-256", ex);
		}
	}

}

package county.bigtree.registry.journal;

import java.nio.charset.StandardCharsets;
import java.time.Instant;

import org.jspecify.annotations.Nullable;

/**
 * A recorded change as it stands in its county's chain.
 *
 * @param actor who caused it, or null for the register itself
 * @param entry the bytes of its entry
 */
record Link(String county, long seq, String id, Instant recordedAt, String kind, @Nullable String actor, byte[] entry,
		byte[] hash) {

	String name() {
		return "%s: change %d (%s)".formatted(this.county, this.seq, this.kind);
	}

	String text() {
		return new String(this.entry, StandardCharsets.UTF_8);
	}

}

package county.bigtree.registry.id;

import java.util.UUID;

import org.hibernate.id.uuid.UuidVersion7Strategy;

/**
 * Identifiers that grow with time (RFC 9562, version 7), so that rows of one time lie
 * together in an index. Within one JVM each is greater than the one before.
 */
public final class Uuid7 {

	private Uuid7() {
	}

	public static UUID next() {
		return UuidVersion7Strategy.INSTANCE.generateUuid(null);
	}

}

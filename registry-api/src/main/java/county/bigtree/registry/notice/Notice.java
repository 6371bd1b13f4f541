package county.bigtree.registry.notice;

import java.time.Instant;
import java.util.Objects;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * A notice with what is needed to put it into words.
 *
 * @param subject what it is about, unlike that of any other of its kind and recipient
 * @param county the county's key; null where it is about the service as a whole
 * @param countyName null with it
 * @param tag of the tree, or null where it is about none
 * @param species the common name of what the tree is, or null
 * @param page the path on which it stands in full
 * @param detail what happened, in a word
 * @param mail whether it waits to be sent, was sent, failed, or stands on the pages only
 */
public record Notice(UUID id, NoticeKind kind, String subject, UUID recipient, @Nullable String county,
		@Nullable String countyName, @Nullable String tag, @Nullable String species, String page, String detail,
		Instant queuedAt, String mail, int tries, @Nullable String lastError) {

	/** The county of a notice that is of one. */
	String inCounty() {
		return Objects.requireNonNull(this.county);
	}

}

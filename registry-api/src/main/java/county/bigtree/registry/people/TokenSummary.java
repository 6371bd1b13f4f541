package county.bigtree.registry.people;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * What the owner of a token may see of it afterwards.
 *
 * @param last4 its last four characters
 * @param expiresOn the last day, in UTC, on which it works
 * @param scope what it is good for, at most
 * @param lastUsedOn the day, in UTC, on which it was last used; null where it never was
 */
public record TokenSummary(UUID id, String name, String last4, Instant createdAt, LocalDate expiresOn, TokenScope scope,
		@Nullable LocalDate lastUsedOn) {

}

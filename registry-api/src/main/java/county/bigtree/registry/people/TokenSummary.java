package county.bigtree.registry.people;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

/**
 * What the owner of a token may see of it afterwards.
 *
 * @param last4 its last four characters
 * @param expiresOn the last day, in UTC, on which it works
 */
public record TokenSummary(UUID id, String name, String last4, Instant createdAt, LocalDate expiresOn) {

}

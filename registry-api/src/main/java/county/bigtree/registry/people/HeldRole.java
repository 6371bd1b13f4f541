package county.bigtree.registry.people;

import java.time.Instant;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * A role as somebody holds, held or will hold it.
 *
 * @param id of this holding
 * @param county null for the administrator
 * @param from the instant from which it holds
 * @param until the instant at which it ended or will end; null while nobody said so
 */
public record HeldRole(UUID id, @Nullable String county, Role role, Instant from, @Nullable Instant until) {

}

package county.bigtree.domain.review;

import java.util.UUID;

/**
 * Somebody with an account, for telling one person from another.
 */
public record PersonId(UUID value) {
}

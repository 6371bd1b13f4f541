package county.bigtree.registry.upkeep;

import java.time.Instant;

import org.jspecify.annotations.Nullable;

/**
 * Something wrong with how the register is kept.
 *
 * @param kind in a word
 * @param place node and folder, where one of several has it; else empty
 * @param detail what was found, for administrators
 */
public record Trouble(String kind, String place, Instant since, @Nullable String detail) {
}

package county.bigtree.registry.tree;

import java.util.List;
import java.util.UUID;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import org.jspecify.annotations.Nullable;

/**
 * What is split off a tree.
 *
 * @param measurements those that were taken of the other tree
 * @param location where the other tree stands
 * @param species what it is; the same if left out
 */
public record SplitBody(@NotEmpty List<@NotNull UUID> measurements, @NotNull @Valid PlaceBody location,
		@Nullable String species, @NotBlank String reason) {
}

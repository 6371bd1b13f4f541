package county.bigtree.registry.county;

import county.bigtree.registry.rules.RulebookJson;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import io.swagger.v3.oas.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * A county as it is founded.
 *
 * @param timeZone an IANA time zone; never changes
 * @param tagPrefix two to four capitals before the numbers of its trees' tags
 * @param boundary a GeoJSON geometry; without one nothing is outside
 * @param practice whether the county is for practice and in no public list
 * @param rulebook its first rules, from the beginning; left out, the defaults
 */
public record CountyBody(@NotNull @Pattern(regexp = "[a-z][a-z0-9]*(-[a-z0-9]+)*") @Size(max = 60) String key,
		@NotNull @Size(min = 1, max = 100) String name, @NotNull @Size(min = 1, max = 100) String state,
		@NotNull String timeZone, @Nullable @Pattern(regexp = "[A-Z]{2,4}") String tagPrefix,
		@Nullable @Schema(ref = "#/components/schemas/Geometry") JsonNode boundary, @Nullable Boolean practice,
		@Nullable @Valid RulebookJson rulebook) {
}

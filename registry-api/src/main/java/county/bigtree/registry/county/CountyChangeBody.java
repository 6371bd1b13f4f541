package county.bigtree.registry.county;

import jakarta.validation.constraints.Size;
import io.swagger.v3.oas.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * What changes of a county; what is left out stays.
 *
 * @param boundary a GeoJSON geometry; JSON's null takes it away, and then nothing is
 * outside
 */
public record CountyChangeBody(@Nullable @Size(min = 1, max = 100) String name,
		@Nullable @Size(min = 1, max = 100) String state,
		@Nullable @Schema(ref = "#/components/schemas/Geometry") JsonNode boundary) {
}

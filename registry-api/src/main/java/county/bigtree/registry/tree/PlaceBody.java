package county.bigtree.registry.tree;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Positive;
import org.jspecify.annotations.Nullable;

/**
 * Where the centre of a tree's base stands.
 *
 * @param latitude degrees north, WGS 84
 * @param longitude degrees east, WGS 84
 * @param accuracyMetres how well that is known; 20 m where nothing is said
 */
public record PlaceBody(@NotNull @DecimalMin("-90") @DecimalMax("90") Double latitude,
		@NotNull @DecimalMin("-180") @DecimalMax("180") Double longitude, @Nullable @Positive Double accuracyMetres) {

	double accuracyOrDefault() {
		return (this.accuracyMetres != null) ? this.accuracyMetres : 20;
	}

}

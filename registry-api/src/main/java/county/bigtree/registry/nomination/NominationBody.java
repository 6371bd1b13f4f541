package county.bigtree.registry.nomination;

import java.time.Instant;
import java.util.List;

import county.bigtree.registry.measurement.MeasurementBody;
import county.bigtree.registry.tree.PlaceBody;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import io.swagger.v3.oas.annotations.media.Schema;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * A nomination as it is filed.
 *
 * @param species the key of a species
 * @param locality how to find the tree, private
 * @param access whether one may go there: public, by-permission, none
 * @param visibility how much of the place the public may see: exact, nearby, county
 * @param filedFor whom it was filed for, if they have no account
 * @param completedAt when the form was completed in the woods
 * @param measurement the first measurement
 * @param confirmedChecks the checks whose questions the filer has answered
 */
public record NominationBody(@NotNull String species, @NotNull @Valid PlaceBody location, @Nullable String locality,
		@Nullable @Pattern(regexp = "public|by-permission|none") String access,
		@Nullable @Pattern(regexp = "exact|nearby|county") String visibility, @Nullable OwnerBody owner,
		@Nullable @Schema(ref = "#/components/schemas/Measurer") JsonNode filedFor, @Nullable Instant completedAt,
		@NotNull MeasurementBody measurement, @Nullable List<String> confirmedChecks) {

	/**
	 * The same with these checks confirmed.
	 */
	public NominationBody confirming(List<String> checks) {
		return new NominationBody(this.species, this.location, this.locality, this.access, this.visibility, this.owner,
				this.filedFor, this.completedAt, this.measurement.confirming(checks), this.confirmedChecks);
	}

	/**
	 * The owner and what they consent to.
	 */
	public record OwnerBody(@Nullable String name, @Nullable String contact, @Nullable Boolean consentToVisit,
			@Nullable Boolean consentToPublish) {

		boolean publishes() {
			return Boolean.TRUE.equals(this.consentToPublish);
		}

	}

}

package county.bigtree.registry.nomination;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;

import county.bigtree.registry.measurement.MeasurementBody;
import county.bigtree.registry.tree.PlaceBody;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/**
 * A nomination as it is filed.
 *
 * @param species the key of a species
 * @param locality how to find the tree, private
 * @param access whether one may go there: public, by-permission, none
 * @param visibility how much of the place the public may see: exact, nearby, county
 * @param owner who owns the tree, as far as known, and what they said to the filer
 * @param filedFor who found the tree, where somebody else files for them
 * @param completedAt when the form was completed in the woods
 * @param measurement the first measurement
 * @param confirmedChecks the checks whose questions the filer has answered
 */
public record NominationBody(@NotNull String species, @NotNull @Valid PlaceBody location, @Nullable String locality,
		@Nullable @Pattern(regexp = "public|by-permission|none") String access,
		@Nullable @Pattern(regexp = "exact|nearby|county") String visibility, @Nullable @Valid OwnerSaid owner,
		@Nullable @Valid FiledFor filedFor, @Nullable Instant completedAt, @NotNull MeasurementBody measurement,
		@Nullable List<String> confirmedChecks) {

	/**
	 * The same with these checks confirmed.
	 */
	public NominationBody confirming(List<String> checks) {
		return new NominationBody(this.species, this.location, this.locality, this.access, this.visibility, this.owner,
				this.filedFor, this.completedAt, this.measurement.confirming(checks), this.confirmedChecks);
	}

	/**
	 * The owner and what they consent to.
	 *
	 * @param person the account, where they have one
	 * @param consentToVisit whether a verifier may come
	 * @param consentToPublish whether the tree may be listed and its exact place be
	 * published
	 */
	public record OwnerSaid(@Nullable @Size(max = 200) String name, @Nullable @Size(max = 500) String contact,
			@Nullable UUID person, @Nullable Boolean consentToVisit, @Nullable Boolean consentToPublish) {

		boolean publishes() {
			return Boolean.TRUE.equals(this.consentToPublish);
		}

		/** Whether anything is said at all. */
		boolean says() {
			return Stream.of(this.name, this.contact).anyMatch((word) -> word != null && !word.isBlank())
					|| this.person != null || this.consentToVisit != null || this.consentToPublish != null;
		}

	}

	/**
	 * Who found the tree and filed on paper or by word of mouth.
	 *
	 * @param name what they are called, private
	 * @param contact how to reach them, private
	 * @param credit the name under which they want to be credited
	 * @param consentToCredit whether that name may be public
	 * @param person the account, where they have one after all
	 */
	public record FiledFor(@Nullable @Size(max = 200) String name, @Nullable @Size(max = 500) String contact,
			@Nullable @Size(max = 100) String credit, @Nullable Boolean consentToCredit, @Nullable UUID person) {

		boolean names() {
			return this.person != null || this.name != null && !this.name.isBlank();
		}

		/** The public credit, with consent only. */
		@Nullable String publicCredit() {
			return Boolean.TRUE.equals(this.consentToCredit) ? this.credit : null;
		}

	}

}

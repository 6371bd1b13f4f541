package county.bigtree.registry.visit;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/**
 * A visit as it is planned.
 *
 * @param tree the tree's id or tag
 * @param purpose sign-off, remeasure, condition or doubt
 * @param verifier who is to go; left out, the person who plans it
 * @param guest true where the verifier is none of the county's, and may verify at this
 * tree until something came of the visit
 * @param companion who goes along
 * @param byWhen the last day on which it is of use
 * @param arrangedOn the day arranged with the owner
 * @param arrangedAt the instant, where more than the day was arranged
 * @param notes for those who go there, never public
 */
public record PlanBody(@NotNull String tree, @NotNull String purpose, @Nullable UUID verifier, @Nullable Boolean guest,
		@Nullable @Size(max = 200) String companion, @Nullable LocalDate byWhen, @Nullable LocalDate arrangedOn,
		@Nullable Instant arrangedAt, @Nullable @Size(max = 2000) String notes) {

	boolean forGuest() {
		return Boolean.TRUE.equals(this.guest);
	}

}

package county.bigtree.registry.owner;

import java.time.LocalDate;
import java.util.List;

import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/**
 * What an owner says, in place of what they said before for the same purposes.
 *
 * @param purposes visit, listing, place, photos
 * @param given whether they consent
 * @param how form, letter, e-mail, telephone, in-person
 * @param givenOn the day on which they said it; today where nothing is said
 * @param until the last day on which a consent holds; for ever where nothing is said
 * @param remarks what else they said, private
 */
public record ConsentBody(@NotEmpty List<@NotNull @Pattern(regexp = "visit|listing|place|photos") String> purposes,
		@NotNull Boolean given, @NotNull @Pattern(regexp = "form|letter|e-mail|telephone|in-person") String how,
		@Nullable LocalDate givenOn, @Nullable LocalDate until, @Nullable @Size(max = 2000) String remarks) {
}

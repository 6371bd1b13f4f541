package county.bigtree.registry.species;

import java.util.List;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/**
 * A species that the catalogue lacks.
 *
 * @param scientificName genus and species, with a multiplication sign for a hybrid
 * @param authority who named it, as botanists write it
 * @param source where that is printed
 * @param localNames other common names that find it
 */
public record AddedSpeciesBody(@NotBlank @Size(max = 200) String scientificName,
		@NotBlank @Size(max = 200) String authority, @NotBlank @Size(max = 400) String source,
		@NotBlank @Size(max = 200) String commonName, @Nullable Boolean conifer,
		@Nullable @Size(max = 50) List<@NotBlank @Size(max = 200) String> synonyms,
		@Nullable @Size(max = 50) List<@NotBlank @Size(max = 200) String> localNames) {
}

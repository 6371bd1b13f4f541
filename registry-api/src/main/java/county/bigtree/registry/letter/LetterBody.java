package county.bigtree.registry.letter;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/**
 * A letter to a county.
 *
 * @param about tip, condition, doubt, owner, privacy, records, accessibility, other
 * @param tree the tree, by id or tag or however the writer calls it
 * @param text what they have to say
 * @param contact how to answer them, private
 */
public record LetterBody(
		@NotNull @Pattern(regexp = "tip|condition|doubt|owner|privacy|records|accessibility|other") String about,
		@Nullable @Size(max = 200) String tree, @NotBlank @Size(max = 5000) String text,
		@Nullable @Size(max = 500) String contact) {
}

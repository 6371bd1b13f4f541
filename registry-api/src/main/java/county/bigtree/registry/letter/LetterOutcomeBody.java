package county.bigtree.registry.letter;

import java.time.LocalDate;

import county.bigtree.registry.nomination.NominationBody;
import county.bigtree.registry.tree.PlaceBody;
import county.bigtree.registry.visit.PlanBody;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/**
 * What becomes of a letter; what it becomes is done in the same step.
 *
 * @param became nothing, answer, nomination, report, visit, correction
 * @param answer what was answered, private
 * @param nomination the nomination, in that case
 * @param report the condition report, in that case
 * @param visit the visit to be made, in that case
 * @param correction the correction of a tree, in that case
 */
public record LetterOutcomeBody(
		@NotNull @Pattern(regexp = "nothing|answer|nomination|report|visit|correction") String became,
		@Nullable @Size(max = 5000) String answer, @Nullable @Valid NominationBody nomination,
		@Nullable @Valid Report report, @Nullable @Valid PlanBody visit, @Nullable @Valid Correction correction) {

	/**
	 * A condition in which the tree was found.
	 *
	 * @param tree by id or tag; left out, the tree that the letter is about
	 */
	public record Report(@Nullable String tree, @NotNull String condition, @NotNull LocalDate observedOn,
			@Nullable @Size(max = 2000) String remarks) {
	}

	/**
	 * A correction: of what is shown of a tree's place, of where it stands, or of what it
	 * is.
	 *
	 * @param tree by id or tag; left out, the tree that the letter is about
	 * @param by by what the species was told
	 */
	public record Correction(@Nullable String tree,
			@Nullable @Pattern(regexp = "exact|nearby|county") String visibility, @Nullable @Valid PlaceBody location,
			@Nullable String species, @Nullable @Pattern(regexp = "leaf|fruit|bark|bud|record") String by,
			@NotBlank @Size(max = 2000) String reason) {
	}

}

package county.bigtree.registry.tree;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A ruling on a tree's stems.
 *
 * @param form single; forked above or below breast height; several stems; or stems fused
 * into one
 * @param unionHeightFeet how high above the ground the stems' piths meet
 * @param scoredStem which stem is scored, in words that lead there
 * @param measureAt where its girth is taken
 * @param began the day from which the ruling holds; today if left out
 * @param keeps measurements on record that were taken as the ruling says
 */
public record StemRulingBody(@NotNull @Pattern(regexp = "single|forked-above|forked-below|several|fused") String form,
		@Nullable @DecimalMin("0") @DecimalMax("400") BigDecimal unionHeightFeet, @Nullable String scoredStem,
		@Nullable String measureAt, @Nullable LocalDate began, @Nullable List<@NotNull UUID> keeps,
		@NotBlank String reason) {
}

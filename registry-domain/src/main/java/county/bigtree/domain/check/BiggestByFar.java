package county.bigtree.domain.check;

import java.util.Optional;

import county.bigtree.domain.quantity.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * A figure larger by far than any of the species on the county's books. Then the name or
 * the figure is wrong, or it is what the register looks for, and is looked at first.
 */
final class BiggestByFar implements Check {

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		String species = filed.species();
		CountyForm.Largest largest = (species != null) ? known.form().largest(TreeName.of(species))
				: CountyForm.Largest.NONE;
		if (species == null || largest.trees() < Thresholds.BY_FAR_OF) {
			return Optional.empty();
		}
		Sizes sizes = filed.sizes();
		return find("girth", "in", sizes.girthInches(), Thresholds.BY_FAR, largest.girthInches(), species)
			.or(() -> find("height", "ft", sizes.heightFeet(), Thresholds.HEIGHT_BY_FAR, largest.heightFeet(), species))
			.or(() -> find("crown", "ft", sizes.spreadFeet(), Thresholds.BY_FAR, largest.spreadFeet(), species));
	}

	private static Optional<Finding> find(String figure, String unit, @Nullable Estimate filed, double times,
			double largest, String species) {
		if (filed == null || filed.value() <= times * largest) {
			return Optional.empty();
		}
		return Optional.of(Finding.question("biggest-by-far",
				"A %s of %s %s would be far more than that of any %s on the books here, %s %s at most: if figure and species are right, it is a great find, so please look at both again."
					.formatted(figure, Words.number(filed.value()), unit, species, Words.number(largest), unit),
				new Finding.Numbers().with("figure", figure)
					.with("filed", filed.value())
					.with("largestOnTheBooks", largest))
			.asExtraordinary());
	}

}

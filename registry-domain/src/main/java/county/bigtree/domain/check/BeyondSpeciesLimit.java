package county.bigtree.domain.check;

import java.util.Optional;

import county.bigtree.domain.quantity.Estimate;

/**
 * Higher or thicker than the largest published for the species. Then it is either a slip
 * or what the register looks for, and is looked at first.
 */
final class BeyondSpeciesLimit implements Check {

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		String species = filed.species();
		return (species != null) ? SpeciesLimits.of(TreeName.of(species)).flatMap((limit) -> look(filed, limit))
				: Optional.empty();
	}

	private static Optional<Finding> look(Filed filed, SpeciesLimits.Limit limit) {
		Estimate girth = filed.sizes().girthInches();
		Estimate height = filed.sizes().heightFeet();
		double mostGirth = Math.PI * limit.diameterInches() * Thresholds.DIAMETER_LIMIT;
		double mostHeight = limit.heightFeet() * Thresholds.HEIGHT_LIMIT;
		if (height != null && height.value() > mostHeight) {
			return Optional.of(finding("height", Words.feet(height.value()), Words.feet(limit.heightFeet()), filed,
					new Finding.Numbers().with("heightFeet", height.value())
						.with("largestHeightFeet", limit.heightFeet())));
		}
		if (girth != null && girth.value() > mostGirth) {
			double largest = Math.PI * limit.diameterInches();
			return Optional.of(finding("girth", Words.inches(girth.value()), Words.inches(largest), filed,
					new Finding.Numbers().with("girthInches", girth.value()).with("largestGirthInches", largest)));
		}
		return Optional.empty();
	}

	private static Finding finding(String figure, String filed, String largest, Filed of, Finding.Numbers numbers) {
		return Finding.question("beyond-species-limit",
				"A %s of %s would be more than the largest published for %s, about %s: if it is right, it is a great find, so please measure it twice."
					.formatted(figure, filed, of.species(), largest),
				numbers)
			.asExtraordinary();
	}

}

package county.bigtree.domain.check;

import java.util.Optional;

import county.bigtree.domain.quantity.Estimate;

/**
 * A height near or beyond that at which a pole of green wood of that thickness bends
 * under its own weight ({@link BucklingHeight}). A staked sapling may stand so. Palms,
 * whose wood is another, are left out.
 */
final class NearBuckling implements Check {

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		Estimate girth = filed.sizes().girthInches();
		Estimate height = filed.sizes().heightFeet();
		if (girth == null || height == null || Stems.isPalm(filed)) {
			return Optional.empty();
		}
		double most = BucklingHeight.feet(girth.value() / Math.PI, Thresholds.ELASTICITY, Thresholds.GREEN_WEIGHT);
		if (height.value() <= most) {
			return Optional.empty();
		}
		return Optional.of(Finding.question("near-buckling",
				"A stem of this girth bends under its own weight at about %s, and %s was filed: please look at height and girth again."
					.formatted(Words.feet(most), Words.feet(height.value())),
				new Finding.Numbers().with("bucklingHeightFeet", most).with("heightFeet", height.value())));
	}

}

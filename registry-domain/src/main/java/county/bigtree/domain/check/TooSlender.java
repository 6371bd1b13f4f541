package county.bigtree.domain.check;

import java.util.Optional;

import county.bigtree.domain.quantity.Estimate;

/**
 * A height of more diameters than trees are found to have. Palms, whose stems don't
 * thicken, are left out, and saplings, which are staked.
 */
final class TooSlender implements Check {

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		Estimate girth = filed.sizes().girthInches();
		Estimate height = filed.sizes().heightFeet();
		if (girth == null || height == null || girth.value() < Math.PI * Thresholds.SAPLING_INCHES
				|| Stems.isPalm(filed)) {
			return Optional.empty();
		}
		double slenderness = Slenderness.of(girth.value(), height.value());
		boolean grown = girth.value() > Math.PI * Thresholds.SLENDER_FROM_INCHES;
		double most = grown ? Thresholds.SLENDER_GROWN : Thresholds.SLENDER;
		if (slenderness <= most) {
			return Optional.empty();
		}
		return Optional.of(Finding.question("too-slender",
				"The tree would be %s times as high as its stem is thick, and more than %s is hardly ever found: please look at height and girth again."
					.formatted(Words.number(slenderness), Words.number(most)),
				new Finding.Numbers().with("slenderness", slenderness).with("most", most)));
	}

}

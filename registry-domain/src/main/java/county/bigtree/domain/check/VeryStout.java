package county.bigtree.domain.check;

import java.util.Optional;

import county.bigtree.domain.quantity.Estimate;

/**
 * A stem stouter for its height than all but the oldest trees: often several stems grown
 * together, or one that has lost its top.
 */
final class VeryStout implements Check {

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		Estimate girth = filed.sizes().girthInches();
		Estimate height = filed.sizes().heightFeet();
		if (girth == null || height == null) {
			return Optional.empty();
		}
		double slenderness = Slenderness.of(girth.value(), height.value());
		boolean grown = girth.value() > Math.PI * Thresholds.SLENDER_FROM_INCHES;
		if (!grown || slenderness >= Thresholds.STOUT) {
			return Optional.empty();
		}
		return Optional.of(Finding.note("very-stout",
				"The tree would be only %s times as high as its stem is thick: is it one stem, and was the girth taken at the right height?"
					.formatted(Words.number(slenderness)),
				new Finding.Numbers().with("slenderness", slenderness).with("least", Thresholds.STOUT)));
	}

}

package county.bigtree.domain.check;

import java.util.Optional;
import java.util.OptionalDouble;

import county.bigtree.domain.quantity.Estimate;

/**
 * Height and spread that do not go with the girth, for the species and the county: a
 * reading or a name may be wrong, or the tree has lost its top. Silent where another unit
 * explains it, which {@link UnitSlip} says.
 */
final class OddProportions implements Check {

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		Estimate girth = filed.sizes().girthInches();
		String species = filed.species();
		if (girth == null || species == null || !UnitSlip.find(filed, known).isEmpty()) {
			return Optional.empty();
		}
		Proportions proportions = Proportions.of(TreeName.of(species), girth.value(), filed.sizes().heightFeet(),
				filed.sizes().spreadFeet(), known.form());
		OptionalDouble squared = proportions.squared();
		if (squared.isEmpty() || squared.getAsDouble() <= proportions.oddFrom(known.form())) {
			return Optional.empty();
		}
		return Optional.of(finding(species, girth.value(), proportions));
	}

	private static Finding finding(String species, double girth, Proportions proportions) {
		String detail = "With a girth of %s, %s is as a rule about %s high and %s wide here, and these figures are far from that: please look again at each figure, and at the species."
			.formatted(Words.inches(girth), species, Words.feet(proportions.expectedHeightFeet()),
					Words.feet(proportions.expectedSpreadFeet()));
		Finding.Numbers numbers = new Finding.Numbers().with("girthInches", girth)
			.with("expectedHeightFeet", proportions.expectedHeightFeet())
			.with("expectedSpreadFeet", proportions.expectedSpreadFeet());
		if (!Double.isNaN(proportions.height())) {
			numbers.with("heightDeviations", proportions.height());
		}
		if (!Double.isNaN(proportions.spread())) {
			numbers.with("spreadDeviations", proportions.spread());
		}
		return Finding.question("odd-proportions", detail, numbers);
	}

}

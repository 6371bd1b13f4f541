package county.bigtree.domain.check;

import java.util.Optional;

import county.bigtree.domain.measuring.TangentHeight;

/**
 * A leaning tree measured by tangents: its top stands nearer or farther than its base,
 * and the height reads high or low (by a sixth for a top 15 ft off at 100 ft), unless how
 * far the top stands off is entered.
 */
final class LeaningTangent implements Check {

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		if (!filed.leans() || !(filed.heightReading() instanceof TangentHeight tangent)
				|| tangent.topOffset() != null) {
			return Optional.empty();
		}
		return Optional.of(Finding.question("leaning-tangent",
				"The tree leans, and angles with one distance then read too high or too low: was the distance taken to the point under the top?",
				new Finding.Numbers()));
	}

}

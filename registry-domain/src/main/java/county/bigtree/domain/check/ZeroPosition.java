package county.bigtree.domain.check;

import java.util.Optional;

import county.bigtree.domain.place.Position;

/**
 * A place at 0, 0: what a device without a fix writes.
 */
final class ZeroPosition implements Check {

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		Position at = filed.position();
		if (at == null || !isZero(at)) {
			return Optional.empty();
		}
		return Optional.of(Finding.question("zero-position",
				"The place is 0, 0, which devices write when they don't know where they are: please look it up on a map.",
				new Finding.Numbers().with("latitude", at.latitude()).with("longitude", at.longitude())));
	}

	static boolean isZero(Position at) {
		return Math.abs(at.latitude()) < Thresholds.ZERO && Math.abs(at.longitude()) < Thresholds.ZERO;
	}

}

package county.bigtree.domain.check;

import java.util.Optional;
import java.util.function.Predicate;

import county.bigtree.domain.place.Position;

/**
 * A place outside the county's line, where no swap of coordinates or signs brings it in,
 * which {@link SwappedCoordinates} says.
 */
final class OutsideCounty implements Check {

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		Position at = filed.position();
		Predicate<Position> county = known.county();
		if (at == null || county == null || county.test(at) || ZeroPosition.isZero(at)
				|| SwappedCoordinates.find(at, county).isPresent()) {
			return Optional.empty();
		}
		return Optional.of(Finding.question("outside-county",
				"The place lies outside the county: a tree belongs to the county in which the middle of its base stands.",
				new Finding.Numbers().with("latitude", at.latitude()).with("longitude", at.longitude())));
	}

}

package county.bigtree.domain.check;

import java.util.Optional;

/**
 * A species that the county does not list.
 */
final class NotEligible implements Check {

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		if (known.eligible()) {
			return Optional.empty();
		}
		return Optional.of(Finding.question("not-eligible",
				"This county does not list %s: it can be filed, but it will hold no title.".formatted(filed.species()),
				new Finding.Numbers()));
	}

}

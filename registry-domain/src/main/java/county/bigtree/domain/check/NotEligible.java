package county.bigtree.domain.check;

import java.util.Optional;

/**
 * A tree that was ruled not eligible.
 */
final class NotEligible implements Check {

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		if (known.eligible()) {
			return Optional.empty();
		}
		return Optional.of(Finding.question("not-eligible",
				"This tree was ruled not eligible here: it can be filed, but it will hold no title.",
				new Finding.Numbers()));
	}

}

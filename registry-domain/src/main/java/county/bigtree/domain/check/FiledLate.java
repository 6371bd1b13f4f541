package county.bigtree.domain.check;

import java.util.Optional;

/**
 * Filed longer after its day than the county allows for.
 */
final class FiledLate implements Check {

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		if (filed.measuredOn() == null
				|| !filed.measuredOn().plusMonths(known.rules().oldestFilingMonths()).isBefore(filed.filedOn())) {
			return Optional.empty();
		}
		return Optional.of(Finding.note("filed-late",
				"The tree was measured on %s, more than %s months ago: it counts only by a coordinator's sign-off."
					.formatted(filed.measuredOn(), known.rules().oldestFilingMonths()),
				new Finding.Numbers().with("measuredOn", filed.measuredOn())
					.with("oldestFilingMonths", (double) known.rules().oldestFilingMonths())));
	}

}

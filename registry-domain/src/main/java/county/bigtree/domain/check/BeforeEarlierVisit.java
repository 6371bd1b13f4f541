package county.bigtree.domain.check;

import java.util.Optional;

/**
 * A measuring day before that of the visit already on the books.
 */
final class BeforeEarlierVisit implements Check {

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		Earlier earlier = known.earlier();
		if (earlier == null || filed.measuredOn() == null || !filed.measuredOn().isBefore(earlier.measuredOn())) {
			return Optional.empty();
		}
		return Optional.of(Finding.question("before-earlier-visit",
				"The measuring day, %s, lies before %s, when this tree was measured last: is it the right day?"
					.formatted(filed.measuredOn(), earlier.measuredOn()),
				new Finding.Numbers().with("measuredOn", filed.measuredOn())
					.with("earlierMeasuredOn", earlier.measuredOn())));
	}

}

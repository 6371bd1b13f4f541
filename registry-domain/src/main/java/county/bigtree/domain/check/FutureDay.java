package county.bigtree.domain.check;

import java.util.Optional;

/**
 * A day that has not been yet can't have been a measuring day.
 */
final class FutureDay implements Check {

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		if (filed.measuredOn() == null || !filed.measuredOn().isAfter(filed.filedOn())) {
			return Optional.empty();
		}
		return Optional.of(Finding.stop("future-day",
				"The measuring day, %s, has not come yet: today is %s.".formatted(filed.measuredOn(), filed.filedOn()),
				new Finding.Numbers().with("measuredOn", filed.measuredOn()).with("today", filed.filedOn())));
	}

}

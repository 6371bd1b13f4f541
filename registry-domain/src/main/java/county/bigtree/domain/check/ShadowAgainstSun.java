package county.bigtree.domain.check;

import java.time.Duration;
import java.time.Instant;
import java.util.DoubleSummaryStatistics;
import java.util.Optional;
import java.util.stream.IntStream;

import county.bigtree.domain.measuring.ShadowHeight;
import county.bigtree.domain.place.Position;

/**
 * The reference's shadow against the sun at that place and time. Allows for a watch that
 * is off, a pair who walk from one shadow to the other, and ground and pole not quite
 * true.
 */
final class ShadowAgainstSun implements Check {

	private static final int STEP_MINUTES = 5;

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		Position position = filed.position();
		if (!(filed.heightReading() instanceof ShadowHeight shadow) || shadow.at() == null || position == null) {
			return Optional.empty();
		}
		return look(shadow.sunElevationDegrees(), elevations(shadow.at(), position, known.sun()));
	}

	private static DoubleSummaryStatistics elevations(Instant at, Position position, SunElevation sun) {
		int steps = Thresholds.SUN_MINUTES / STEP_MINUTES;
		return IntStream.rangeClosed(-steps, steps)
			.mapToObj((step) -> at.plus(Duration.ofMinutes((long) step * STEP_MINUTES)))
			.mapToDouble((instant) -> sun.degrees(instant, position))
			.summaryStatistics();
	}

	private static Optional<Finding> look(double told, DoubleSummaryStatistics sun) {
		boolean agrees = told >= sun.getMin() - Thresholds.SUN_DEGREES && told <= sun.getMax() + Thresholds.SUN_DEGREES;
		if (agrees || Double.isNaN(sun.getAverage())) {
			return Optional.empty();
		}
		double stood = sun.getAverage();
		String detail = (sun.getMax() < 0)
				? "At that place and time the sun was below the horizon: please look at the time."
				: "By the reference's shadow the sun stood at %s degrees, but at that place and time it stood at %s: please look at the time, the lengths, and whether the ground was level."
					.formatted(Words.number(told), Words.number(stood));
		return Optional.of(Finding.question("shadow-against-sun", detail,
				new Finding.Numbers().with("shadowElevationDegrees", told).with("sunElevationDegrees", stood)));
	}

}

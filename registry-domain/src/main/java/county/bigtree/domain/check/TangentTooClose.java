package county.bigtree.domain.check;

import java.util.Objects;
import java.util.Optional;

import county.bigtree.domain.measuring.TangentHeight;
import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Length;

/**
 * Angles taken from closer than the tree is high, where a limb may hide the top.
 */
final class TangentTooClose implements Check {

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		if (!(filed.heightReading() instanceof TangentHeight tangent)) {
			return Optional.empty();
		}
		double distance = level(tangent);
		double height = tangent.estimate().value();
		if (distance >= Thresholds.TANGENT_DISTANCE * height) {
			return Optional.empty();
		}
		return Optional.of(Finding.note("tangent-too-close",
				"The angles were taken from %s, closer than the tree is high: from there a limb may be taken for the top, and the height reads high."
					.formatted(Words.feet(distance)),
				new Finding.Numbers().with("distanceFeet", distance).with("heightFeet", height)));
	}

	/** Level distance, in feet. */
	private static double level(TangentHeight tangent) {
		Length slope = tangent.slopeDistance();
		Angle angle = tangent.slopeAngle();
		Length line = tangent.lineToBase();
		if (slope != null && angle != null) {
			return slope.feet() * Math.cos(angle.radians());
		}
		return (line != null) ? line.feet() * Math.cos(tangent.baseAngle().radians())
				: Objects.requireNonNull(tangent.horizontalDistance()).feet();
	}

}

package county.bigtree.registry.transfer;

import java.math.BigDecimal;
import java.util.List;

import county.bigtree.domain.measuring.Readings;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.LengthText;
import county.bigtree.registry.measurement.MeasurementBody;
import org.jspecify.annotations.Nullable;

/**
 * Compares the points that an older record states with those that its figures come to.
 */
final class StatedPoints {

	/** Stated points are rounded to whole ones (common practice, no source). */
	private static final BigDecimal ROUNDING = new BigDecimal("0.5");

	private StatedPoints() {
	}

	/**
	 * What is to be told of the difference, or null where there is none.
	 */
	static @Nullable String compare(ImportPlan.@Nullable Entry column, List<String> cells,
			MeasurementBody measurement) {
		String stated = (column != null) ? column.in(cells) : "";
		return (column == null || stated.isEmpty()) ? null : compare(column.label(), stated, measurement);
	}

	private static @Nullable String compare(String label, String stated, MeasurementBody measurement) {
		BigDecimal points = new Readings(measurement.girth(), measurement.height(), measurement.crown()).reduce()
			.score()
			.orElseThrow()
			.points()
			.toBigDecimal();
		try {
			boolean near = points.subtract(BigDecimal.valueOf(LengthText.number(stated)))
				.abs()
				.compareTo(ROUNDING) <= 0;
			return near ? null
					: "%s: %s points are stated, but the figures come to %s".formatted(label, stated, points);
		}
		catch (InvalidReadingException ex) {
			return "%s: must be a number of points but was %s; the figures come to %s".formatted(label, stated, points);
		}
	}

}

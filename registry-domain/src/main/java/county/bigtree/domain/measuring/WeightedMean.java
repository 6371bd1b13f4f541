package county.bigtree.domain.measuring;

import java.util.List;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;

/**
 * Several measurements of one quantity at about one time, each weighted by the inverse
 * square of its standard uncertainty, which is more than zero. Textbook least squares.
 */
public final class WeightedMean {

	private WeightedMean() {
	}

	public static Estimate of(List<Estimate> measurements) {
		if (measurements.isEmpty()) {
			throw new InvalidReadingException("measurements", Flaw.WRONG_COUNT, "must be at least one but was 0");
		}
		double weights = 0;
		double weighted = 0;
		for (Estimate measurement : measurements) {
			double u = Figures.positive("standardUncertainty", measurement.standardUncertainty());
			weights += 1 / (u * u);
			weighted += measurement.value() / (u * u);
		}
		return new Estimate(weighted / weights, 1 / Math.sqrt(weights));
	}

}

package county.bigtree.domain.quantity;

import java.util.List;
import java.util.stream.Collectors;

/**
 * One length read several times, as its mean. Scatter s of n readings gives the mean an
 * uncertainty of s / √n with n - 1 degrees of freedom (JCGM 100:2008, 4.2.3). An
 * uncertainty stated for the readings is what repeating can't better, and is added in
 * quadrature; the default of an instrument counts the scatter already, and is the least
 * that the mean is given.
 *
 * @param readings two or more, all above zero or below, none repeated itself
 */
public record RepeatedLength(List<Length> readings) implements Length {

	public RepeatedLength {
		readings = List.copyOf(readings);
		if (readings.size() < 2 || readings.size() > 1000) {
			throw new InvalidReadingException("repeats", Flaw.WRONG_COUNT,
					"must be from 2 to 1000 but was " + readings.size());
		}
		for (int i = 0; i < readings.size(); i++) {
			if (readings.get(i) instanceof RepeatedLength) {
				throw new InvalidReadingException("repeats/" + i, Flaw.CONTRADICTION, "must not be repeated itself");
			}
			if (readings.get(i).metres() * readings.get(0).metres() < 0) {
				throw new InvalidReadingException("repeats/" + i, Flaw.CONTRADICTION,
						"must have the sign of the first");
			}
		}
	}

	@Override
	public double in(LengthUnit wanted) {
		return Repeats.mean(all(wanted));
	}

	/** Of the mean, from the scatter alone: s / √n. */
	public double standardErrorOfMean(LengthUnit wanted) {
		return Repeats.standardErrorOfMean(all(wanted));
	}

	private double[] all(LengthUnit wanted) {
		return this.readings.stream().mapToDouble((reading) -> reading.in(wanted)).toArray();
	}

	@Override
	public Estimate estimate(LengthUnit wanted, DefaultUncertainty byDefault) {
		double each = 0;
		for (Length reading : this.readings) {
			each += reading.estimate(wanted, byDefault).standardUncertainty() / this.readings.size();
		}
		return Repeats.estimate(all(wanted), each, statesUncertainty());
	}

	@Override
	public boolean statesUncertainty() {
		return this.readings.stream().allMatch(Length::statesUncertainty);
	}

	@Override
	public String text() {
		return this.readings.stream().map(Length::text).collect(Collectors.joining(", ", "mean of (", ")"));
	}

}

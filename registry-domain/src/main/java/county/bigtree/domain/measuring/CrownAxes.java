package county.bigtree.domain.measuring;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;

/**
 * Mean spread from widths of the crown in two or more directions: W = (D1 + ... + Dn) / n
 * (common practice: the widest, and the one square to it).
 *
 * @param axes two or more, each more than zero
 */
public record CrownAxes(List<Length> axes, Notes notes) implements CrownReading {

	private static final int MOST_AXES = 360;

	private static final double LOPSIDED = 2;

	public CrownAxes {
		axes = List.copyOf(axes);
		if (axes.size() < 2 || axes.size() > MOST_AXES) {
			throw new InvalidReadingException("axes", Flaw.WRONG_COUNT,
					"must be from 2 to " + MOST_AXES + " but was " + axes.size());
		}
		for (int i = 0; i < axes.size(); i++) {
			axes.get(i).positive("axes/" + i);
		}
	}

	@Override
	public Method method() {
		return Method.AXES;
	}

	@Override
	public Estimate estimate() {
		return figure().estimate();
	}

	private Figure figure() {
		int n = this.axes.size();
		List<Budget.Term> terms = new ArrayList<>();
		double sum = 0;
		for (Length axis : this.axes) {
			Estimate width = axis.estimate(LengthUnit.FT, InstrumentDefaults.CROWN_AXIS);
			sum += width.value();
			terms.add(Budget.term("D" + (terms.size() + 1), 1.0 / n, width));
		}
		return Figure.spread(sum / n, new Budget(terms));
	}

	@Override
	public List<WorkingLine> working() {
		Working working = new Working();
		for (int i = 0; i < this.axes.size(); i++) {
			working.converted("D" + (i + 1), this.axes.get(i), LengthUnit.FT);
		}
		String numbers = this.axes.stream()
			.map((axis) -> Working.feet(axis) + " ft")
			.collect(Collectors.joining(" + ", "(", ") / " + this.axes.size()));
		return working.then(figure().lines((this.axes.size() == 2) ? "(D1 + D2) / 2" : "(D1 + ... + Dn) / n", numbers));
	}

	@Override
	public List<Caution> cautions() {
		double widest = this.axes.stream().mapToDouble(Length::feet).max().orElseThrow();
		double narrowest = this.axes.stream().mapToDouble(Length::feet).min().orElseThrow();
		if (widest <= LOPSIDED * narrowest) {
			return List.of();
		}
		return List.of(new Caution("crown-lopsided",
				"One axis is more than twice another: measure more directions, or spokes from the stem."));
	}

}

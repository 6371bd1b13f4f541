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
 * Girth from one diameter, or from two at right angles: C = π times their arithmetic
 * mean, because the taut girth of any convex section is π times its mean width (Cauchy's
 * formula). The geometric mean is for the section's area, not for girth.
 *
 * @param diameters one or two, each more than zero
 */
public record DiameterGirth(List<Length> diameters, GirthNotes notes) implements GirthReading {

	private static final double OUT_OF_ROUND = 1.5;

	public DiameterGirth {
		diameters = List.copyOf(diameters);
		if (diameters.isEmpty() || diameters.size() > 2) {
			throw new InvalidReadingException("diameters", Flaw.WRONG_COUNT,
					"must be one or two but was " + diameters.size());
		}
		for (int i = 0; i < diameters.size(); i++) {
			diameters.get(i).positive("diameters/" + i);
		}
	}

	@Override
	public Method method() {
		return Method.DIAMETER;
	}

	@Override
	public Estimate estimate() {
		return figure().estimate();
	}

	private Figure figure() {
		int n = this.diameters.size();
		List<Budget.Term> terms = new ArrayList<>();
		double sum = 0;
		for (Length diameter : this.diameters) {
			Estimate read = diameter.estimate(LengthUnit.IN, InstrumentDefaults.DIAMETER);
			sum += read.value();
			terms.add(Budget.term(symbol(terms.size()), Math.PI / n, read));
		}
		return Figure.girth(RoundStem.girth(sum / n), new Budget(terms));
	}

	@Override
	public List<WorkingLine> working() {
		Working working = new Working();
		for (int i = 0; i < this.diameters.size(); i++) {
			working.converted(symbol(i), this.diameters.get(i), LengthUnit.IN);
		}
		String numbers = this.diameters.stream()
			.map((diameter) -> Working.inches(diameter) + " in")
			.collect(Collectors.joining(" + "));
		boolean one = this.diameters.size() == 1;
		return working.then(
				figure().lines(one ? "π d" : "π (d1 + d2) / 2", one ? "π × " + numbers : "π × (" + numbers + ") / 2"));
	}

	@Override
	public List<Caution> cautions() {
		List<Caution> cautions = new ArrayList<>(this.notes.cautions());
		double widest = this.diameters.stream().mapToDouble(Length::inches).max().orElseThrow();
		double narrowest = this.diameters.stream().mapToDouble(Length::inches).min().orElseThrow();
		if (widest > OUT_OF_ROUND * narrowest) {
			cautions.add(new Caution("stem-out-of-round",
					"One diameter is more than one and a half times the other: a tape around the stem is surer."));
		}
		return cautions;
	}

	private String symbol(int index) {
		return (this.diameters.size() == 1) ? "d" : "d" + (index + 1);
	}

}

package county.bigtree.domain.measuring;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;

/**
 * The girths of every stem of a tree that has several, each at its own measuring height.
 * The tree counts as its largest single stem: C = max(C1, ..., Cn) (common practice).
 * What the stems come to together is told by {@link #atRootCollar()}, and not scored.
 *
 * @param stems two or more, each more than zero
 */
public record StemsGirth(List<Length> stems, GirthNotes notes) implements GirthReading {

	private static final int MOST = 100;

	public StemsGirth {
		stems = List.copyOf(stems);
		if (stems.size() < 2 || stems.size() > MOST) {
			throw new InvalidReadingException("stems", Flaw.WRONG_COUNT,
					"must be from 2 to " + MOST + " but was " + stems.size());
		}
		for (int i = 0; i < stems.size(); i++) {
			stems.get(i).positive("stems/" + i);
		}
	}

	@Override
	public Method method() {
		return Method.STEMS;
	}

	/** The stem that is scored; of equals the first. */
	public Length largest() {
		// max would take the last of equals
		return this.stems.stream()
			.sorted(Comparator.comparingDouble(Length::inches).reversed())
			.findFirst()
			.orElseThrow();
	}

	/**
	 * The diameter in inches of one stem with the cross-section of all, as woodland forms
	 * are described; never scored.
	 */
	public Estimate atRootCollar() {
		List<Estimate> diameters = new ArrayList<>();
		this.stems.forEach((stem) -> diameters
			.add(stem.estimate(LengthUnit.IN, InstrumentDefaults.GIRTH_TAPE).times(1 / Math.PI)));
		return RootCollar.equivalentDiameter(diameters);
	}

	@Override
	public Estimate estimate() {
		return figure().estimate();
	}

	private Figure figure() {
		Estimate stem = largest().estimate(LengthUnit.IN, InstrumentDefaults.GIRTH_TAPE);
		return Figure.girth(stem.value(), Budget.of(Budget.term("max", 1, stem)));
	}

	@Override
	public List<WorkingLine> working() {
		Working working = new Working();
		for (int i = 0; i < this.stems.size(); i++) {
			working.converted("C" + (i + 1), this.stems.get(i), LengthUnit.IN);
		}
		String numbers = this.stems.stream()
			.map((stem) -> Working.inches(stem) + " in")
			.collect(Collectors.joining(", ", "max(", ")"));
		return working.then(figure().lines("max(C1, ..., Cn)", numbers));
	}

	@Override
	public List<Caution> cautions() {
		List<Caution> cautions = new ArrayList<>(this.notes.cautions());
		cautions.add(new Caution("several-stems",
				"The tree has " + this.stems.size() + " stems and counts as the largest of them."));
		return cautions;
	}

}

package county.bigtree.domain.measuring;

import java.util.List;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;

/**
 * Girth read from a tape around the stem: C is what the tape says. A taut tape spans the
 * hollows of a fluted stem (Moran and Williams 2002, North. J. Appl. For. 19:28-33).
 *
 * @param girth more than zero
 */
public record TapeGirth(Length girth, GirthNotes notes) implements GirthReading {

	public TapeGirth {
		girth.positive("girth");
	}

	@Override
	public Method method() {
		return Method.TAPE;
	}

	@Override
	public Estimate estimate() {
		return figure().estimate();
	}

	private Figure figure() {
		Estimate read = this.girth.estimate(LengthUnit.IN, InstrumentDefaults.GIRTH_TAPE);
		return Figure.girth(read.value(), Budget.of(Budget.term("tape", 1, read)));
	}

	@Override
	public List<WorkingLine> working() {
		return new Working().then(figure().lines("tape", this.girth.text()));
	}

	@Override
	public List<Caution> cautions() {
		return this.notes.cautions();
	}

}

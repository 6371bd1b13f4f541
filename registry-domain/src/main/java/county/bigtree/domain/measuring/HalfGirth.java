package county.bigtree.domain.measuring;

import java.util.List;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;

/**
 * Girth from the tape laid half around, between two marks opposite each other, where a
 * wall or a fence forbids the whole: C = 2 half, and the uncertainty doubles too (Forest
 * Inventory and Analysis core field guide, 5.9.2, from memory).
 *
 * @param halfGirth more than zero
 */
public record HalfGirth(Length halfGirth, GirthNotes notes) implements GirthReading {

	public HalfGirth {
		halfGirth.positive("halfGirth");
	}

	@Override
	public Method method() {
		return Method.HALF_GIRTH;
	}

	@Override
	public Estimate estimate() {
		return figure().estimate();
	}

	private Figure figure() {
		Estimate half = this.halfGirth.estimate(LengthUnit.IN, InstrumentDefaults.GIRTH_TAPE);
		return Figure.girth(2 * half.value(), Budget.of(Budget.term("half", 2, half)));
	}

	@Override
	public List<WorkingLine> working() {
		return new Working().converted("half", this.halfGirth, LengthUnit.IN)
			.then(figure().lines("2 half", "2 × " + Working.inches(this.halfGirth) + " in"));
	}

	@Override
	public List<Caution> cautions() {
		return this.notes.cautions();
	}

}

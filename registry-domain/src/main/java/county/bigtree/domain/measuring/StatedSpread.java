package county.bigtree.domain.measuring;

import java.util.List;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;

/**
 * A mean crown spread taken over from an older record that doesn't say how it was
 * measured.
 *
 * @param spread more than zero
 */
public record StatedSpread(Length spread, Notes notes) implements CrownReading {

	public StatedSpread {
		spread.positive("spread");
	}

	@Override
	public Method method() {
		return Method.STATED_SPREAD;
	}

	@Override
	public Estimate estimate() {
		return figure().estimate();
	}

	private Figure figure() {
		Estimate stated = this.spread.estimate(LengthUnit.FT, InstrumentDefaults.STATED);
		return Figure.spread(stated.value(), Budget.of(Budget.term("record", 1, stated)));
	}

	@Override
	public List<WorkingLine> working() {
		return new Working().then(figure().lines("as recorded", this.spread.text()));
	}

	@Override
	public List<Caution> cautions() {
		return List.of(new Caution("method-unknown", "The record doesn't say how this spread was measured."));
	}

}

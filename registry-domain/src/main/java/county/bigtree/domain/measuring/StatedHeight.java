package county.bigtree.domain.measuring;

import java.util.List;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;

/**
 * A height taken over from an older record that doesn't say how it was measured.
 *
 * @param height more than zero
 */
public record StatedHeight(Length height, Notes notes) implements HeightReading {

	public StatedHeight {
		height.positive("height");
	}

	@Override
	public Method method() {
		return Method.STATED_HEIGHT;
	}

	@Override
	public Estimate estimate() {
		return figure().estimate();
	}

	private Figure figure() {
		Estimate stated = this.height.estimate(LengthUnit.FT, InstrumentDefaults.STATED);
		return Figure.height(stated.value(), Budget.of(Budget.term("record", 1, stated)));
	}

	@Override
	public List<WorkingLine> working() {
		return new Working().then(figure().lines("as recorded", this.height.text()));
	}

	@Override
	public List<Caution> cautions() {
		return List.of(new Caution("method-unknown", "The record doesn't say how this height was measured."));
	}

}

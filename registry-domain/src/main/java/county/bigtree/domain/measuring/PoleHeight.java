package county.bigtree.domain.measuring;

import java.util.List;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;

/**
 * Height read from a plumb pole, or a tape dropped from the top, which is the reference
 * method: H is what it says.
 *
 * @param height more than zero
 */
public record PoleHeight(Length height, Notes notes) implements HeightReading {

	public PoleHeight {
		height.positive("height");
	}

	/** What a pole leaning from the plumb by so much reaches, in its own unit. */
	public static double plumb(double length, double tiltDegrees) {
		double tilt = Figures.within("tiltDegrees", tiltDegrees, 0, Math.nextDown(90.0), "from 0 to below 90");
		return Figures.positive("length", length) * Math.cos(Math.toRadians(tilt));
	}

	@Override
	public Method method() {
		return Method.POLE;
	}

	@Override
	public Estimate estimate() {
		return figure().estimate();
	}

	private Figure figure() {
		Estimate read = this.height.estimate(LengthUnit.FT, InstrumentDefaults.POLE);
		return Figure.height(read.value(), Budget.of(Budget.term("pole", 1, read)));
	}

	@Override
	public List<WorkingLine> working() {
		return new Working().then(figure().lines("pole", this.height.text()));
	}

	@Override
	public List<Caution> cautions() {
		return List.of();
	}

}

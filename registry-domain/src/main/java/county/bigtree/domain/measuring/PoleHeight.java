package county.bigtree.domain.measuring;

import java.util.ArrayList;
import java.util.List;

import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * Height read from a pole, or a tape dropped from the top, which is the reference method:
 * H is what it says where it is plumb. A pole that leans by t, or a length taped along a
 * leaning stem, is laid plumb: H = L cos t. What the ends miss is added: H = L cos t + z.
 *
 * @param height or length, more than zero
 * @param tilt from the plumb, or null for none
 * @param offset of the tree beyond the ends of the pole or tape, negative where those
 * reach beyond the tree, or null for none
 */
public record PoleHeight(Length height, @Nullable Angle tilt, @Nullable Length offset,
		Notes notes) implements HeightReading {

	public PoleHeight {
		height.positive("height");
		if (offset != null) {
			Figures.within("offset", offset.feet(), Math.nextUp(-height.feet()), height.feet(),
					"less than the height either way");
		}
	}

	public PoleHeight(Length height, Notes notes) {
		this(height, null, null, notes);
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
		Estimate t = (this.tilt != null) ? Figure.radians(this.tilt) : Estimate.exact(0);
		Estimate z = (this.offset != null) ? this.offset.estimate(LengthUnit.FT, InstrumentDefaults.BASE_OFFSET)
				: Estimate.exact(0);
		double cosine = Math.cos(t.value());
		List<Budget.Term> terms = new ArrayList<>();
		terms.add(Budget.term((this.tilt != null) ? "L" : "pole", cosine, read));
		if (this.tilt != null) {
			terms.add(Budget.term("t", -read.value() * Math.sin(t.value()), t));
		}
		if (this.offset != null) {
			terms.add(Budget.term("z", 1, z));
		}
		return Figure.height(read.value() * cosine + z.value(), new Budget(terms));
	}

	@Override
	public List<WorkingLine> working() {
		if (this.tilt == null && this.offset == null) {
			return new Working().then(figure().lines("pole", this.height.text()));
		}
		Working working = new Working().converted("L", this.height, LengthUnit.FT);
		String formula = "L";
		String numbers = Working.feet(this.height) + " ft";
		if (this.tilt != null) {
			formula += " cos t";
			numbers += " × cos(" + Working.degrees(this.tilt) + ")";
		}
		if (this.offset != null) {
			working.converted("z", this.offset, LengthUnit.FT);
			formula += " + z";
			numbers += " + " + Working.feet(this.offset) + " ft";
		}
		return working.then(figure().lines(formula, numbers));
	}

	@Override
	public List<Caution> cautions() {
		return List.of();
	}

}

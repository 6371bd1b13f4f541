package county.bigtree.domain.measuring;

import java.util.List;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;

/**
 * Height from a plumb stick held still before the eye, on which the tree covers t and a
 * person or pole of known height h at the stem covers r: H = h t / r.
 *
 * @param treeOnStick not less than the reference on the stick
 * @param referenceOnStick more than zero
 * @param referenceHeight more than zero
 */
public record StickHeight(Length treeOnStick, Length referenceOnStick, Length referenceHeight,
		Notes notes) implements HeightReading {

	/** In inches: below this the width of a mark rules the result (proposal). */
	private static final double SHORT_REFERENCE = 0.5;

	public StickHeight {
		treeOnStick.positive("treeOnStick");
		referenceOnStick.positive("referenceOnStick");
		referenceHeight.positive("referenceHeight");
		if (treeOnStick.inches() < referenceOnStick.inches()) {
			throw new InvalidReadingException("treeOnStick", Flaw.OUT_OF_RANGE, "must not be less than the reference's "
					+ referenceOnStick.text() + " but was " + treeOnStick.text());
		}
	}

	@Override
	public Method method() {
		return Method.STICK;
	}

	@Override
	public Estimate estimate() {
		return figure().estimate();
	}

	private Figure figure() {
		Estimate t = this.treeOnStick.estimate(LengthUnit.IN, InstrumentDefaults.STICK_MARK);
		Estimate r = this.referenceOnStick.estimate(LengthUnit.IN, InstrumentDefaults.STICK_MARK);
		Estimate h = this.referenceHeight.estimate(LengthUnit.FT, InstrumentDefaults.REFERENCE_HEIGHT);
		double height = h.value() * t.value() / r.value();
		Budget budget = Budget.of(Budget.term("h", t.value() / r.value(), h),
				Budget.term("t", h.value() / r.value(), t), Budget.term("r", -height / r.value(), r));
		return Figure.height(height, budget).notBelow(InstrumentDefaults.SIMILAR_TRIANGLES, allStated());
	}

	private boolean allStated() {
		return this.treeOnStick.statesUncertainty() && this.referenceOnStick.statesUncertainty()
				&& this.referenceHeight.statesUncertainty();
	}

	@Override
	public List<WorkingLine> working() {
		String numbers = "%s ft × %s in / %s in".formatted(Working.feet(this.referenceHeight),
				Working.inches(this.treeOnStick), Working.inches(this.referenceOnStick));
		return new Working().converted("h", this.referenceHeight, LengthUnit.FT)
			.converted("t", this.treeOnStick, LengthUnit.IN)
			.converted("r", this.referenceOnStick, LengthUnit.IN)
			.then(figure().lines("h t / r", numbers));
	}

	@Override
	public List<Caution> cautions() {
		if (this.referenceOnStick.inches() >= SHORT_REFERENCE) {
			return List.of();
		}
		return List.of(new Caution("reference-short",
				"The reference covers less than half an inch of the stick: stand nearer, or take a taller reference."));
	}

}

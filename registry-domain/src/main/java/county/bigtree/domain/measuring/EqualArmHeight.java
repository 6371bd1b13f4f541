package county.bigtree.domain.measuring;

import java.util.List;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * Height from a plumb stick as long as its distance from the eye, which covers the tree
 * from base to top at a horizontal distance X: H = X, whatever the height of the eye
 * (common practice). Of a stick s held at a stated reach E the tree is X s / E. Where the
 * stick's foot, or the level line of a 45 degree sight, met the stem above or below the
 * base, that offset z is added.
 *
 * @param distance horizontal, from the eye to under the top, more than zero
 * @param stickLength as much of the stick as covers the tree, more than zero, given with
 * the reach, or null
 * @param reach from the eye to the stick, level, more than zero, or null for as long as
 * the stick
 * @param baseOffset how far above the base the covered part begins, negative if below, or
 * null for none
 */
public record EqualArmHeight(Length distance, @Nullable Length stickLength, @Nullable Length reach,
		@Nullable Length baseOffset, Notes notes) implements HeightReading {

	public EqualArmHeight {
		distance.positive("distance");
		if ((stickLength == null) != (reach == null)) {
			throw new InvalidReadingException((stickLength == null) ? "stickLength" : "reach", Flaw.MISSING,
					"must be given: stickLength and reach, or neither");
		}
		if (stickLength != null && reach != null) {
			stickLength.positive("stickLength");
			reach.positive("reach");
		}
		if (baseOffset != null) {
			Figures.within("baseOffset", baseOffset.feet(), Math.nextUp(-distance.feet()), distance.feet(),
					"less than the distance either way");
		}
	}

	public EqualArmHeight(Length distance, @Nullable Length baseOffset, Notes notes) {
		this(distance, null, null, baseOffset, notes);
	}

	/** By a stick of any length at any reach, in the unit of the distance. */
	public static double height(double distance, double stick, double reach) {
		return Figures.positive("distance", distance) * Figures.positive("stick", stick)
				/ Figures.positive("reach", reach);
	}

	@Override
	public Method method() {
		return Method.EQUAL_ARM;
	}

	@Override
	public Estimate estimate() {
		return figure().estimate();
	}

	private Figure figure() {
		Estimate x = this.distance.estimate(LengthUnit.FT, InstrumentDefaults.DISTANCE);
		Estimate z = (this.baseOffset != null) ? this.baseOffset.estimate(LengthUnit.FT, InstrumentDefaults.BASE_OFFSET)
				: Estimate.exact(0);
		if (this.stickLength == null || this.reach == null) {
			Budget equal = Budget.of(Budget.term("X", 1, x), Budget.term("z", 1, z),
					Budget.term("arm", x.value(), InstrumentDefaults.EQUAL_ARM_RATIO));
			return Figure.height(x.value() + z.value(), equal).notBelow(InstrumentDefaults.SIMILAR_TRIANGLES, false);
		}
		Estimate s = this.stickLength.estimate(LengthUnit.IN, InstrumentDefaults.STICK_MARK);
		Estimate e = this.reach.estimate(LengthUnit.IN, InstrumentDefaults.REACH);
		double height = height(x.value(), s.value(), e.value());
		Budget budget = Budget.of(Budget.term("X", s.value() / e.value(), x),
				Budget.term("s", x.value() / e.value(), s), Budget.term("E", -height / e.value(), e),
				Budget.term("z", 1, z));
		return Figure.height(height + z.value(), budget)
			.notBelow(InstrumentDefaults.SIMILAR_TRIANGLES, allStated(this.stickLength, this.reach));
	}

	private boolean allStated(Length stick, Length eye) {
		return this.distance.statesUncertainty() && stick.statesUncertainty() && eye.statesUncertainty()
				&& (this.baseOffset == null || this.baseOffset.statesUncertainty());
	}

	@Override
	public List<WorkingLine> working() {
		Working working = new Working().converted("X", this.distance, LengthUnit.FT);
		String formula = "X";
		String numbers = Working.feet(this.distance) + " ft";
		if (this.stickLength != null && this.reach != null) {
			working.converted("s", this.stickLength, LengthUnit.IN).converted("E", this.reach, LengthUnit.IN);
			formula += " s / E";
			numbers += " × " + Working.inches(this.stickLength) + " in / " + Working.inches(this.reach) + " in";
		}
		if (this.baseOffset != null) {
			working.converted("z", this.baseOffset, LengthUnit.FT);
			formula += " + z";
			numbers += " + " + Working.feet(this.baseOffset) + " ft";
		}
		return working.then(figure().lines(formula, numbers));
	}

	@Override
	public List<Caution> cautions() {
		return List.of();
	}

}

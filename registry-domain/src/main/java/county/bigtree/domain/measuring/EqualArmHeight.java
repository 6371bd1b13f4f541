package county.bigtree.domain.measuring;

import java.util.List;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * Height from a plumb stick as long as its distance from the eye, which covers the tree
 * from base to top at a horizontal distance X: H = X, whatever the height of the eye
 * (common practice). Where the stick's foot, or the level line of a 45 degree sight, met
 * the stem above or below the base, that offset z is added: H = X + z.
 *
 * @param distance horizontal, from the eye to under the top, more than zero
 * @param baseOffset how far above the base the covered part begins, negative if below, or
 * null for none
 */
public record EqualArmHeight(Length distance, @Nullable Length baseOffset, Notes notes) implements HeightReading {

	public EqualArmHeight {
		distance.positive("distance");
		if (baseOffset != null) {
			Figures.within("baseOffset", baseOffset.feet(), Math.nextUp(-distance.feet()), distance.feet(),
					"less than the distance either way");
		}
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
		Budget budget = Budget.of(Budget.term("X", 1, x), Budget.term("z", 1, z),
				Budget.term("arm", x.value(), InstrumentDefaults.EQUAL_ARM_RATIO));
		return Figure.height(x.value() + z.value(), budget).notBelow(InstrumentDefaults.SIMILAR_TRIANGLES, false);
	}

	@Override
	public List<WorkingLine> working() {
		Working working = new Working().converted("X", this.distance, LengthUnit.FT);
		if (this.baseOffset == null) {
			return working.then(figure().lines("X", Working.feet(this.distance) + " ft"));
		}
		return working.converted("z", this.baseOffset, LengthUnit.FT)
			.then(figure().lines("X + z",
					Working.feet(this.distance) + " ft + " + Working.feet(this.baseOffset) + " ft"));
	}

	@Override
	public List<Caution> cautions() {
		return List.of();
	}

}

package county.bigtree.domain.measuring;

import java.time.Instant;
import java.util.List;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * Height from two shadows under one sun on level ground: H = h Lt / Lr, for a plumb
 * reference of height h with a shadow Lr and a tree shadow Lt from under the top to the
 * shadow's tip.
 *
 * @param treeShadow more than zero
 * @param referenceHeight more than zero
 * @param referenceShadow more than zero
 * @param at when the shadows were taped, or null
 */
public record ShadowHeight(Length treeShadow, Length referenceHeight, Length referenceShadow, @Nullable Instant at,
		Notes notes) implements HeightReading {

	private static final double LOW_SUN = 20;

	private static final double HIGH_SUN = 70;

	public ShadowHeight {
		treeShadow.positive("treeShadow");
		referenceHeight.positive("referenceHeight");
		referenceShadow.positive("referenceShadow");
	}

	/**
	 * All in one unit.
	 * @param tipAboveBase how much higher the shadow's tip lies than the tree's base,
	 * negative if lower
	 */
	public static double height(double referenceHeight, double treeShadow, double referenceShadow,
			double tipAboveBase) {
		return Figures.positive("referenceHeight", referenceHeight) * Figures.positive("treeShadow", treeShadow)
				/ Figures.positive("referenceShadow", referenceShadow) + Figures.finite("tipAboveBase", tipAboveBase);
	}

	/** Of the sun above the horizon, as the reference's shadow tells it. */
	public double sunElevationDegrees() {
		return Math.toDegrees(Math.atan2(this.referenceHeight.feet(), this.referenceShadow.feet()));
	}

	@Override
	public Method method() {
		return Method.SHADOW;
	}

	@Override
	public Estimate estimate() {
		return figure().estimate();
	}

	private Figure figure() {
		Estimate lt = this.treeShadow.estimate(LengthUnit.FT, InstrumentDefaults.TREE_SHADOW);
		Estimate h = this.referenceHeight.estimate(LengthUnit.FT, InstrumentDefaults.REFERENCE_HEIGHT);
		Estimate lr = this.referenceShadow.estimate(LengthUnit.FT, InstrumentDefaults.REFERENCE_SHADOW);
		double height = height(h.value(), lt.value(), lr.value(), 0);
		Budget budget = Budget.of(Budget.term("h", lt.value() / lr.value(), h),
				Budget.term("Lt", h.value() / lr.value(), lt), Budget.term("Lr", -height / lr.value(), lr));
		return Figure.height(height, budget).notBelow(InstrumentDefaults.SIMILAR_TRIANGLES, allStated());
	}

	private boolean allStated() {
		return this.treeShadow.statesUncertainty() && this.referenceHeight.statesUncertainty()
				&& this.referenceShadow.statesUncertainty();
	}

	@Override
	public List<WorkingLine> working() {
		String numbers = "%s ft × %s ft / %s ft".formatted(Working.feet(this.referenceHeight),
				Working.feet(this.treeShadow), Working.feet(this.referenceShadow));
		return new Working().converted("h", this.referenceHeight, LengthUnit.FT)
			.converted("Lt", this.treeShadow, LengthUnit.FT)
			.converted("Lr", this.referenceShadow, LengthUnit.FT)
			.then(figure().lines("h Lt / Lr", numbers));
	}

	@Override
	public List<Caution> cautions() {
		double sun = sunElevationDegrees();
		String degrees = Figures.rounded(sun, 3) + " degrees";
		if (sun < LOW_SUN) {
			return List.of(new Caution("sun-low",
					"The sun stood at " + degrees + ": below 20 degrees the shadow's tip is soft and soon moves."));
		}
		if (sun > HIGH_SUN) {
			return List.of(new Caution("sun-high", "The sun stood at " + degrees
					+ ": above 70 degrees the shadow may end at a limb, not at the top."));
		}
		return List.of();
	}

}

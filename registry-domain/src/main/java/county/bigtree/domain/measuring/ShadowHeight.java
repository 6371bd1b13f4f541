package county.bigtree.domain.measuring;

import java.util.ArrayList;
import java.time.Instant;
import java.util.List;

import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * Height from two shadows under one sun: H = h Lt / Lr, for a plumb reference of height h
 * with a level shadow Lr and a tree shadow Lt from under the top to the shadow's tip. Of
 * a tree shadow s taped from the bark along ground that rises by g, Lt = s cos g + C / (2
 * π), and the tip's height s sin g is added.
 *
 * @param treeShadow more than zero
 * @param referenceHeight more than zero
 * @param referenceShadow more than zero
 * @param groundSlope from the tree to its shadow's tip, negative if down, or null for
 * level
 * @param stemGirth where the tree's shadow was taped from the bark, more than zero, or
 * null
 * @param at when the shadows were taped, or null
 */
public record ShadowHeight(Length treeShadow, Length referenceHeight, Length referenceShadow,
		@Nullable Angle groundSlope, @Nullable Length stemGirth, @Nullable Instant at,
		Notes notes) implements HeightReading {

	private static final double LOW_SUN = 20;

	private static final double HIGH_SUN = 70;

	public ShadowHeight {
		treeShadow.positive("treeShadow");
		referenceHeight.positive("referenceHeight");
		referenceShadow.positive("referenceShadow");
		if (stemGirth != null) {
			stemGirth.positive("stemGirth");
		}
	}

	public ShadowHeight(Length treeShadow, Length referenceHeight, Length referenceShadow, @Nullable Instant at,
			Notes notes) {
		this(treeShadow, referenceHeight, referenceShadow, null, null, at, notes);
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
		Estimate taped = this.treeShadow.estimate(LengthUnit.FT, InstrumentDefaults.TREE_SHADOW);
		Estimate h = this.referenceHeight.estimate(LengthUnit.FT, InstrumentDefaults.REFERENCE_HEIGHT);
		Estimate lr = this.referenceShadow.estimate(LengthUnit.FT, InstrumentDefaults.REFERENCE_SHADOW);
		double g = slopeRadians();
		double ratio = h.value() / lr.value();
		double lt = levelShadowFeet();
		List<Budget.Term> terms = new ArrayList<>();
		terms.add(Budget.term("h", lt / lr.value(), h));
		terms.add(Budget.term(isTapedLevel() ? "Lt" : "s", ratio * Math.cos(g) + Math.sin(g), taped));
		terms.add(Budget.term("Lr", -ratio * lt / lr.value(), lr));
		if (this.groundSlope != null) {
			double bySlope = taped.value() * (Math.cos(g) - ratio * Math.sin(g));
			terms.add(Budget.term("g", bySlope, Figure.radians(this.groundSlope)));
		}
		if (this.stemGirth != null) {
			terms.add(Budget.term("C", ratio / (2 * Math.PI),
					this.stemGirth.estimate(LengthUnit.FT, InstrumentDefaults.GIRTH_TAPE)));
		}
		return Figure.height(height(h.value(), lt, lr.value(), tipAboveBase()), new Budget(terms))
			.notBelow(InstrumentDefaults.SIMILAR_TRIANGLES, allStated());
	}

	private boolean isTapedLevel() {
		return this.groundSlope == null && this.stemGirth == null;
	}

	private double slopeRadians() {
		return (this.groundSlope != null) ? this.groundSlope.radians() : 0;
	}

	private double levelShadowFeet() {
		double radius = (this.stemGirth != null) ? RoundStem.radiusFeet(this.stemGirth.inches()) : 0;
		return this.treeShadow.feet() * Math.cos(slopeRadians()) + radius;
	}

	private double tipAboveBase() {
		return this.treeShadow.feet() * Math.sin(slopeRadians());
	}

	private boolean allStated() {
		return this.treeShadow.statesUncertainty() && this.referenceHeight.statesUncertainty()
				&& this.referenceShadow.statesUncertainty()
				&& (this.groundSlope == null || this.groundSlope.statesUncertainty())
				&& (this.stemGirth == null || this.stemGirth.statesUncertainty());
	}

	@Override
	public List<WorkingLine> working() {
		Working working = new Working().converted("h", this.referenceHeight, LengthUnit.FT)
			.converted(isTapedLevel() ? "Lt" : "s", this.treeShadow, LengthUnit.FT)
			.converted("Lr", this.referenceShadow, LengthUnit.FT);
		if (!isTapedLevel()) {
			levelled(working);
		}
		String numbers = "%s ft × %s ft / %s ft".formatted(Working.feet(this.referenceHeight),
				Working.number(levelShadowFeet()), Working.feet(this.referenceShadow));
		if (this.groundSlope == null) {
			return working.then(figure().lines("h Lt / Lr", numbers));
		}
		working.line("z = s sin g",
				Working.feet(this.treeShadow) + " ft × sin(" + Working.degrees(this.groundSlope) + ")", tipAboveBase(),
				LengthUnit.FT);
		return working.then(figure().lines("h Lt / Lr + z", numbers + " + " + Working.number(tipAboveBase()) + " ft"));
	}

	private void levelled(Working working) {
		String formula = "Lt = s";
		String numbers = Working.feet(this.treeShadow) + " ft";
		if (this.groundSlope != null) {
			formula += " cos g";
			numbers += " × cos(" + Working.degrees(this.groundSlope) + ")";
		}
		if (this.stemGirth != null) {
			formula += " + C / (2 π)";
			numbers += " + " + Working.feet(this.stemGirth) + " ft / (2 × π)";
		}
		working.line(formula, numbers, levelShadowFeet(), LengthUnit.FT);
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

package county.bigtree.domain.measuring;

import java.util.ArrayList;
import java.util.List;

import county.bigtree.domain.quantity.SlopedLength;
import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * Height where the distance to the tree can't be taped: two stations in line with the
 * top, a known horizontal distance D apart, the far eye dz above the near one. X = (D tan
 * a2 + dz) / (tan a1 - tan a2) from the near station to under the top, and H = X (tan a1
 * - tan b), or X tan a1 - Xb tan b where the base lies at another distance Xb. Standard
 * surveying geometry.
 *
 * @param stationsApart horizontal, more than zero
 * @param farEyeAboveNear negative if below, or null for level eyes
 * @param nearTopAngle above the far one and above the base
 * @param farTopAngle above level where the eyes are level
 * @param nearBaseAngle negative if the base lies below the eye
 * @param baseDistance level, from the near eye to the base, where the top stands off it,
 * more than zero, or null
 * @param markAboveBase how far above the ground the lower sight met the stem, 0 or more,
 * or null for the base itself
 */
public record TwoStationHeight(Length stationsApart, @Nullable Length farEyeAboveNear, Angle nearTopAngle,
		Angle farTopAngle, Angle nearBaseAngle, @Nullable Length baseDistance, @Nullable Length markAboveBase,
		Notes notes) implements HeightReading {

	/** In degrees: closer angles multiply their errors (proposal). */
	private static final double NARROW = 8;

	public TwoStationHeight {
		stationsApart.positive("stationsApart");
		if (farEyeAboveNear == null) {
			Figures.positive("farTopAngle/value", farTopAngle.value());
		}
		if (baseDistance == null) {
			Sight.requireAbove("nearTopAngle", nearTopAngle, "the base angle", nearBaseAngle);
		}
		else {
			baseDistance.positive("baseDistance");
		}
		Sight.requireAbove("nearTopAngle", nearTopAngle, "the far angle", farTopAngle);
		distance(stationsApart.feet(), nearTopAngle, farTopAngle, Sight.feet(farEyeAboveNear));
		Sight.requireMark(markAboveBase);
	}

	public TwoStationHeight(Length stationsApart, Angle nearTopAngle, Angle farTopAngle, Angle nearBaseAngle,
			Notes notes) {
		this(stationsApart, null, nearTopAngle, farTopAngle, nearBaseAngle, null, null, notes);
	}

	/**
	 * Horizontal distance from the near station to the point under the top, in the unit
	 * of the baseline.
	 * @param farEyeAboveNear how much higher the eye stands at the far station
	 */
	public static double distance(double stationsApart, Angle nearTop, Angle farTop, double farEyeAboveNear) {
		Sight.requireAbove("nearTopAngle", nearTop, "the far angle", farTop);
		double farRise = Figures.positive("stationsApart", stationsApart) * farTop.tangent()
				+ Figures.finite("farEyeAboveNear", farEyeAboveNear);
		return Figures.positive("farTopAngle", farRise) / (nearTop.tangent() - farTop.tangent());
	}

	/** Of the top above the near eye, in the unit of the baseline. */
	public static double topAboveNearEye(double stationsApart, Angle nearTop, Angle farTop, double farEyeAboveNear) {
		return distance(stationsApart, nearTop, farTop, farEyeAboveNear) * nearTop.tangent();
	}

	@Override
	public Method method() {
		return Method.TWO_STATION;
	}

	@Override
	public Estimate estimate() {
		return figure().estimate();
	}

	private Figure figure() {
		Estimate d = this.stationsApart.estimate(LengthUnit.FT, InstrumentDefaults.BASELINE);
		double x = horizontalFeet();
		double t1 = this.nearTopAngle.tangent();
		double t2 = this.farTopAngle.tangent();
		double tb = this.nearBaseAngle.tangent();
		double narrow = t1 - t2;
		// what a foot of X adds to the height
		double rise = (this.baseDistance == null) ? t1 - tb : t1;
		List<Budget.Term> terms = new ArrayList<>();
		terms.add(Budget.term("D", t2 / narrow * rise, d));
		if (this.farEyeAboveNear != null) {
			terms.add(Budget.term("dz", rise / narrow,
					this.farEyeAboveNear.estimate(LengthUnit.FT, InstrumentDefaults.BASE_OFFSET)));
		}
		terms.add(term("a1", x - x / narrow * rise, this.nearTopAngle));
		terms.add(term("a2", (d.value() + x) / narrow * rise, this.farTopAngle));
		terms.add(term("b", -baseFeet(), this.nearBaseAngle));
		if (this.baseDistance != null) {
			terms.add(Budget.term("Xb", -tb, this.baseDistance.estimate(LengthUnit.FT, InstrumentDefaults.DISTANCE)));
		}
		Sight.addMark(terms, this.markAboveBase);
		double height = (this.baseDistance == null) ? x * rise : x * t1 - baseFeet() * tb;
		return Figure.height(height + Sight.feet(this.markAboveBase), new Budget(terms))
			.notBelow(InstrumentDefaults.TWO_STATION, allStated());
	}

	private double baseFeet() {
		return (this.baseDistance != null) ? this.baseDistance.feet() : horizontalFeet();
	}

	/** From the sensitivity to the angle's tangent. */
	private static Budget.Term term(String symbol, double toTangent, Angle angle) {
		return Budget.term(symbol, toTangent * Sight.secantSquared(angle), Figure.radians(angle));
	}

	private double horizontalFeet() {
		return distance(this.stationsApart.feet(), this.nearTopAngle, this.farTopAngle,
				Sight.feet(this.farEyeAboveNear));
	}

	private boolean allStated() {
		return this.stationsApart.statesUncertainty() && this.nearTopAngle.statesUncertainty()
				&& this.farTopAngle.statesUncertainty() && this.nearBaseAngle.statesUncertainty()
				&& Sight.statesUncertainty(this.farEyeAboveNear) && Sight.statesUncertainty(this.baseDistance)
				&& Sight.statesUncertainty(this.markAboveBase);
	}

	@Override
	public List<WorkingLine> working() {
		Working working = new Working().converted("D", this.stationsApart, LengthUnit.FT)
			.sighted("a1", this.nearTopAngle)
			.sighted("a2", this.farTopAngle)
			.sighted("b", this.nearBaseAngle);
		distanceLines(working);
		String x = Working.number(horizontalFeet());
		String near = Working.tangent(this.nearTopAngle);
		String base = Working.tangent(this.nearBaseAngle);
		if (this.baseDistance == null) {
			return Sight.withMark(working, figure(), "X (tan a1 - tan b)", "%s ft × (%s - %s)".formatted(x, near, base),
					this.markAboveBase);
		}
		working.converted("Xb", this.baseDistance, LengthUnit.FT);
		return Sight.withMark(working, figure(), "X tan a1 - Xb tan b",
				"%s ft × %s - %s ft × %s".formatted(x, near, Working.feet(this.baseDistance), base),
				this.markAboveBase);
	}

	private void distanceLines(Working working) {
		String far = Working.tangent(this.farTopAngle);
		String near = Working.tangent(this.nearTopAngle);
		String d = Working.feet(this.stationsApart);
		if (this.farEyeAboveNear == null) {
			working.line("X = D tan a2 / (tan a1 - tan a2)", "%s ft × %s / (%s - %s)".formatted(d, far, near, far),
					horizontalFeet(), LengthUnit.FT);
			return;
		}
		working.converted("dz", this.farEyeAboveNear, LengthUnit.FT)
			.line("X = (D tan a2 + dz) / (tan a1 - tan a2)",
					"(%s ft × %s + %s ft) / (%s - %s)".formatted(d, far, Working.feet(this.farEyeAboveNear), near, far),
					horizontalFeet(), LengthUnit.FT);
	}

	@Override
	public List<Caution> cautions() {
		List<Caution> cautions = new ArrayList<>();
		if (this.nearTopAngle.degrees() - this.farTopAngle.degrees() < NARROW) {
			cautions.add(new Caution("stations-close",
					"The two sights to the top differ by less than 8 degrees: set the stations farther apart."));
		}
		if (this.stationsApart instanceof SlopedLength && this.farEyeAboveNear == null) {
			cautions.add(new Caution("eyes-not-level",
					"The stations lie along a slope: say how much higher the eye was at the far one."));
		}
		return cautions;
	}

}

package county.bigtree.domain.measuring;

import java.util.List;

import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;

/**
 * Height where the distance to the tree can't be taped: two stations in line with the
 * top, a known horizontal distance D apart, with the eye level at both. X = D tan a2 /
 * (tan a1 - tan a2) from the near station, and H = X (tan a1 - tan b). Standard surveying
 * geometry.
 *
 * @param stationsApart horizontal, more than zero
 * @param nearTopAngle above the far one and above the base
 * @param farTopAngle above level
 * @param nearBaseAngle negative if the base lies below the eye
 */
public record TwoStationHeight(Length stationsApart, Angle nearTopAngle, Angle farTopAngle, Angle nearBaseAngle,
		Notes notes) implements HeightReading {

	/** In degrees: closer angles multiply their errors (proposal). */
	private static final double NARROW = 8;

	public TwoStationHeight {
		stationsApart.positive("stationsApart");
		Figures.positive("farTopAngle/value", farTopAngle.value());
		Sight.requireAbove("nearTopAngle", nearTopAngle, "the far angle", farTopAngle);
		Sight.requireAbove("nearTopAngle", nearTopAngle, "the base angle", nearBaseAngle);
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
		double rise = t1 - this.nearBaseAngle.tangent();
		double gain = d.value() / ((t1 - t2) * (t1 - t2));
		Budget budget = Budget.of(Budget.term("D", x * rise / d.value(), d),
				term("a1", x - gain * t2 * rise, this.nearTopAngle), term("a2", gain * t1 * rise, this.farTopAngle),
				term("b", -x, this.nearBaseAngle));
		return Figure.height(x * rise, budget).notBelow(InstrumentDefaults.TWO_STATION, allStated());
	}

	/** From the sensitivity to the angle's tangent. */
	private static Budget.Term term(String symbol, double toTangent, Angle angle) {
		return Budget.term(symbol, toTangent * Sight.secantSquared(angle), Figure.radians(angle));
	}

	private double horizontalFeet() {
		return distance(this.stationsApart.feet(), this.nearTopAngle, this.farTopAngle, 0);
	}

	private boolean allStated() {
		return this.stationsApart.statesUncertainty() && this.nearTopAngle.statesUncertainty()
				&& this.farTopAngle.statesUncertainty() && this.nearBaseAngle.statesUncertainty();
	}

	@Override
	public List<WorkingLine> working() {
		String far = Working.tangent(this.farTopAngle);
		String near = Working.tangent(this.nearTopAngle);
		String distance = "%s ft × %s / (%s - %s)".formatted(Working.feet(this.stationsApart), far, near, far);
		String height = "%s ft × (%s - %s)".formatted(Working.number(horizontalFeet()), near,
				Working.tangent(this.nearBaseAngle));
		return new Working().converted("D", this.stationsApart, LengthUnit.FT)
			.line("X = D tan a2 / (tan a1 - tan a2)", distance, horizontalFeet(), LengthUnit.FT)
			.then(figure().lines("X (tan a1 - tan b)", height));
	}

	@Override
	public List<Caution> cautions() {
		if (this.nearTopAngle.degrees() - this.farTopAngle.degrees() >= NARROW) {
			return List.of();
		}
		return List.of(new Caution("stations-close",
				"The two sights to the top differ by less than 8 degrees: set the stations farther apart."));
	}

}

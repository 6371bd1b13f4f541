package county.bigtree.domain.measuring;

import java.util.ArrayList;
import java.util.Objects;
import java.util.List;

import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * Height from the distances along the sights to the top and to the base, with their
 * signed angles: H = Lt sin a - Lb sin b. Where the base can't be ranged, its leg is
 * taken from a level distance, Xb tan b; where it can't be seen, a mark on the stem k
 * above the ground is sighted and k added. Each leg ends at a real point, so that a top
 * standing off the stem makes no error (Bragg 2008, South. J. Appl. For. 32:38-43; Bragg
 * and others 2011, The sine method, Res. Note SRS-22).
 *
 * @param topDistance more than zero
 * @param topAngle above the base angle
 * @param baseDistance along the sight, more than zero, or null
 * @param baseLevelDistance instead, from the eye to the base, level, more than zero, or
 * null
 * @param baseAngle negative if the base lies below the eye
 * @param markAboveBase how far above the ground the lower sight met the stem, 0 or more,
 * or null for the base itself
 */
public record SineHeight(Length topDistance, Angle topAngle, @Nullable Length baseDistance,
		@Nullable Length baseLevelDistance, Angle baseAngle, @Nullable Length markAboveBase,
		Notes notes) implements HeightReading {

	public SineHeight {
		topDistance.positive("topDistance");
		if ((baseDistance == null) == (baseLevelDistance == null)) {
			throw new InvalidReadingException("baseDistance",
					(baseDistance == null) ? Flaw.MISSING : Flaw.CONTRADICTION,
					"must be given, or baseLevelDistance, and not both");
		}
		if (baseDistance != null) {
			baseDistance.positive("baseDistance");
		}
		else if (baseLevelDistance != null) {
			baseLevelDistance.positive("baseLevelDistance");
		}
		Sight.requireMark(markAboveBase);
		Sight.requireTopAboveBase(topAngle, baseAngle);
		if (!(topDistance.feet() * Math.sin(topAngle.radians())
				- baseRise(baseDistance, baseLevelDistance, baseAngle) > 0)) {
			throw new InvalidReadingException("topDistance", Flaw.OUT_OF_RANGE,
					"must bring the top above the base but was " + topDistance.text());
		}
	}

	public SineHeight(Length topDistance, Angle topAngle, Length baseDistance, Angle baseAngle, Notes notes) {
		this(topDistance, topAngle, baseDistance, null, baseAngle, null, notes);
	}

	/** Of the point sighted below, above the eye, in feet. */
	private static double baseRise(@Nullable Length along, @Nullable Length level, Angle angle) {
		return (along != null) ? along.feet() * Math.sin(angle.radians())
				: Objects.requireNonNull(level).feet() * angle.tangent();
	}

	@Override
	public Method method() {
		return Method.SINE;
	}

	@Override
	public Estimate estimate() {
		return figure().estimate();
	}

	private Figure figure() {
		Estimate lt = this.topDistance.estimate(LengthUnit.FT, InstrumentDefaults.DISTANCE);
		Estimate a = Figure.radians(this.topAngle);
		Estimate b = Figure.radians(this.baseAngle);
		List<Budget.Term> terms = new ArrayList<>();
		terms.add(Budget.term("Lt", Math.sin(a.value()), lt));
		terms.add(Budget.term("a", lt.value() * Math.cos(a.value()), a));
		if (this.baseDistance != null) {
			Estimate lb = this.baseDistance.estimate(LengthUnit.FT, InstrumentDefaults.DISTANCE);
			terms.add(Budget.term("Lb", -Math.sin(b.value()), lb));
			terms.add(Budget.term("b", -lb.value() * Math.cos(b.value()), b));
		}
		else {
			Estimate xb = Objects.requireNonNull(this.baseLevelDistance)
				.estimate(LengthUnit.FT, InstrumentDefaults.DISTANCE);
			terms.add(Budget.term("Xb", -this.baseAngle.tangent(), xb));
			terms.add(Budget.term("b", -xb.value() * Sight.secantSquared(this.baseAngle), b));
		}
		Sight.addMark(terms, this.markAboveBase);
		double height = lt.value() * Math.sin(a.value())
				- baseRise(this.baseDistance, this.baseLevelDistance, this.baseAngle) + Sight.feet(this.markAboveBase);
		return Figure.height(height, new Budget(terms)).notBelow(InstrumentDefaults.SINE, allStated());
	}

	private boolean allStated() {
		return this.topDistance.statesUncertainty() && this.topAngle.statesUncertainty() && base().statesUncertainty()
				&& this.baseAngle.statesUncertainty() && Sight.statesUncertainty(this.markAboveBase);
	}

	private Length base() {
		return (this.baseDistance != null) ? this.baseDistance : Objects.requireNonNull(this.baseLevelDistance);
	}

	@Override
	public List<WorkingLine> working() {
		boolean along = this.baseDistance != null;
		String numbers = "%s ft × sin(%s) - %s ft × ".formatted(Working.feet(this.topDistance),
				Working.degrees(this.topAngle), Working.feet(base()))
				+ (along ? "sin(" + Working.degrees(this.baseAngle) + ")" : Working.tangent(this.baseAngle));
		Working working = new Working().converted("Lt", this.topDistance, LengthUnit.FT)
			.converted(along ? "Lb" : "Xb", base(), LengthUnit.FT)
			.sighted("a", this.topAngle)
			.sighted("b", this.baseAngle);
		String formula = along ? "Lt sin a - Lb sin b" : "Lt sin a - Xb tan b";
		return Sight.withMark(working, figure(), formula, numbers, this.markAboveBase);
	}

	@Override
	public List<Caution> cautions() {
		return List.of();
	}

}

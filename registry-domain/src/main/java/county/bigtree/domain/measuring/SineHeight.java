package county.bigtree.domain.measuring;

import java.util.List;

import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;

/**
 * Height from the distances along the sights to the top and to the base, with their
 * signed angles: H = Lt sin a - Lb sin b. Each leg ends at a real point, so that a top
 * standing off the stem makes no error (Bragg 2008, South. J. Appl. For. 32:38-43; Bragg
 * and others 2011, The sine method, Res. Note SRS-22).
 *
 * @param topDistance more than zero
 * @param topAngle above the base angle
 * @param baseDistance more than zero
 * @param baseAngle negative if the base lies below the eye
 */
public record SineHeight(Length topDistance, Angle topAngle, Length baseDistance, Angle baseAngle,
		Notes notes) implements HeightReading {

	public SineHeight {
		topDistance.positive("topDistance");
		baseDistance.positive("baseDistance");
		Sight.requireTopAboveBase(topAngle, baseAngle);
		double height = topDistance.feet() * Math.sin(topAngle.radians())
				- baseDistance.feet() * Math.sin(baseAngle.radians());
		if (!(height > 0)) {
			throw new InvalidReadingException("topDistance", Flaw.OUT_OF_RANGE,
					"must bring the top above the base but was " + topDistance.text());
		}
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
		Estimate lb = this.baseDistance.estimate(LengthUnit.FT, InstrumentDefaults.DISTANCE);
		Estimate a = Figure.radians(this.topAngle);
		Estimate b = Figure.radians(this.baseAngle);
		double sinA = Math.sin(a.value());
		double sinB = Math.sin(b.value());
		Budget budget = Budget.of(Budget.term("Lt", sinA, lt), Budget.term("a", lt.value() * Math.cos(a.value()), a),
				Budget.term("Lb", -sinB, lb), Budget.term("b", -lb.value() * Math.cos(b.value()), b));
		return Figure.height(lt.value() * sinA - lb.value() * sinB, budget)
			.notBelow(InstrumentDefaults.SINE, allStated());
	}

	private boolean allStated() {
		return this.topDistance.statesUncertainty() && this.topAngle.statesUncertainty()
				&& this.baseDistance.statesUncertainty() && this.baseAngle.statesUncertainty();
	}

	@Override
	public List<WorkingLine> working() {
		String numbers = "%s ft × sin(%s) - %s ft × sin(%s)".formatted(Working.feet(this.topDistance),
				Working.degrees(this.topAngle), Working.feet(this.baseDistance), Working.degrees(this.baseAngle));
		return new Working().converted("Lt", this.topDistance, LengthUnit.FT)
			.converted("Lb", this.baseDistance, LengthUnit.FT)
			.then(figure().lines("Lt sin a - Lb sin b", numbers));
	}

	@Override
	public List<Caution> cautions() {
		return List.of();
	}

}

package county.bigtree.domain.measuring;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * Girth from a Biltmore stick held flat on the bark at a reach E from the eye: the
 * stick's reading S = D √(E / (E + D)), so that D = S (S + √(S² + 4 E²)) / (2 E) and C =
 * π D. Similar triangles of eye, centre and tangent. Too crude to rank large trees (Moran
 * and Williams 2002, North. J. Appl. For. 19:28-33). Either the diameter is read off the
 * stick's scale, or the plain reading and the reach are given.
 *
 * @param diameterRead off the scale, more than zero, or null
 * @param stickReading along the stick from its zero end, more than zero, or null
 * @param reach from the eye to the near bark, more than zero, or null
 */
public record BiltmoreGirth(@Nullable Length diameterRead, @Nullable Length stickReading, @Nullable Length reach,
		GirthNotes notes) implements GirthReading {

	/** In inches: the reach for which sticks are commonly graduated. */
	private static final double USUAL_REACH = 25;

	private static final double SHORTEST_USUAL_REACH = 20;

	private static final double LONGEST_USUAL_REACH = 30;

	private static final double WIDEST_FIT = 60;

	public BiltmoreGirth {
		if (diameterRead != null) {
			if (stickReading != null || reach != null) {
				throw new InvalidReadingException("diameterRead", Flaw.CONTRADICTION,
						"must not be given beside stickReading or reach");
			}
			diameterRead.positive("diameterRead");
		}
		else if (stickReading == null || reach == null) {
			String path = (stickReading != null) ? "reach" : (reach != null) ? "stickReading" : "diameterRead";
			throw new InvalidReadingException(path, Flaw.MISSING,
					"must be given: diameterRead, or stickReading with reach");
		}
		else {
			stickReading.positive("stickReading");
			reach.positive("reach");
		}
	}

	public static BiltmoreGirth ofDiameter(Length diameterRead, GirthNotes notes) {
		return new BiltmoreGirth(diameterRead, null, null, notes);
	}

	public static BiltmoreGirth ofReading(Length stickReading, Length reach, GirthNotes notes) {
		return new BiltmoreGirth(null, stickReading, reach, notes);
	}

	/**
	 * Where the mark for a diameter stands on a stick for this reach; all in one unit.
	 */
	public static double graduation(double diameter, double reach) {
		double d = Figures.positive("diameter", diameter);
		return d * Math.sqrt(Figures.positive("reach", reach) / (reach + d));
	}

	/** The diameter seen at this reading and reach; all in one unit. */
	public static double diameter(double stickReading, double reach) {
		double s = Figures.positive("stickReading", stickReading);
		double e = Figures.positive("reach", reach);
		return s * (s + Math.sqrt(s * s + 4 * e * e)) / (2 * e);
	}

	@Override
	public Method method() {
		return Method.BILTMORE;
	}

	@Override
	public Estimate estimate() {
		return figure().estimate();
	}

	private Figure figure() {
		if (this.diameterRead != null && this.diameterRead.statesUncertainty()) {
			Estimate read = this.diameterRead.estimate(LengthUnit.IN, InstrumentDefaults.DIAMETER);
			return Figure.girth(RoundStem.girth(read.value()), Budget.of(Budget.term("D", Math.PI, read)));
		}
		Estimate e = (this.reach != null) ? this.reach.estimate(LengthUnit.IN, InstrumentDefaults.REACH)
				: new Estimate(USUAL_REACH, InstrumentDefaults.REACH.inches(USUAL_REACH));
		Estimate s = reading(e.value());
		double d = diameterInches();
		double slope = 2 * e.value() * d - s.value() * s.value();
		double bySticks = 2 * s.value() * (d + e.value()) / slope;
		double byReach = -(d * d - s.value() * s.value()) / slope;
		return Figure.girth(RoundStem.girth(d),
				Budget.of(Budget.term("S", Math.PI * bySticks, s), Budget.term("E", Math.PI * byReach, e)));
	}

	/** As read, or where the diameter's mark must have stood. */
	private Estimate reading(double reachInches) {
		if (this.stickReading != null) {
			return this.stickReading.estimate(LengthUnit.IN, InstrumentDefaults.BILTMORE_MARK);
		}
		double mark = graduation(diameterInches(), reachInches);
		return new Estimate(mark, InstrumentDefaults.BILTMORE_MARK.inches(mark));
	}

	private double diameterInches() {
		if (this.diameterRead != null) {
			return this.diameterRead.inches();
		}
		return diameter(Objects.requireNonNull(this.stickReading).inches(),
				Objects.requireNonNull(this.reach).inches());
	}

	@Override
	public List<WorkingLine> working() {
		Working working = new Working();
		if (this.diameterRead != null) {
			working.converted("D", this.diameterRead, LengthUnit.IN);
		}
		else {
			Length s = Objects.requireNonNull(this.stickReading);
			Length e = Objects.requireNonNull(this.reach);
			String numbers = "%s × (%s + √(%s² + 4 × %s²)) / (2 × %s)".formatted(Working.inches(s), Working.inches(s),
					Working.inches(s), Working.inches(e), Working.inches(e));
			working.converted("S", s, LengthUnit.IN)
				.converted("E", e, LengthUnit.IN)
				.line("D = S (S + √(S² + 4 E²)) / (2 E)", numbers, diameterInches(), LengthUnit.IN);
		}
		return working.then(figure().lines("π D", "π × " + Working.number(diameterInches()) + " in"));
	}

	@Override
	public List<Caution> cautions() {
		List<Caution> cautions = new ArrayList<>(this.notes.cautions());
		cautions.add(new Caution("crude-instrument",
				"A Biltmore stick is too crude to rank large trees: a tape or a string around the stem is surer."));
		if (this.reach != null
				&& (this.reach.inches() < SHORTEST_USUAL_REACH || this.reach.inches() > LONGEST_USUAL_REACH)) {
			cautions.add(
					new Caution("unusual-reach", "The reach is " + this.reach.text() + "; 20 to 30 inches are usual."));
		}
		if (diameterInches() > WIDEST_FIT) {
			cautions.add(new Caution("stem-too-wide", "The stem is wider than the 60 inches a stick is fit for."));
		}
		return cautions;
	}

}

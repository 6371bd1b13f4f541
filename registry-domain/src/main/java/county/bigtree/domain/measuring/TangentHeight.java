package county.bigtree.domain.measuring;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * Height from the signed angles to top and base at a known horizontal distance to the
 * point under the top: H = X (tan a - tan b), whether the base lies below or above the
 * eye (DeYoung, Forest Measurements: An Applied Approach, 2.3; US Army TM 5-6675-322-14,
 * p. 9-53). A distance taped along a slope g is first laid level: X = L cos g.
 *
 * @param horizontalDistance more than zero, or null
 * @param slopeDistance more than zero, or null
 * @param slopeAngle of the ground taped along, given with the slope distance
 * @param topAngle above the base angle
 * @param baseAngle negative if the base lies below the eye
 */
public record TangentHeight(@Nullable Length horizontalDistance, @Nullable Length slopeDistance,
		@Nullable Angle slopeAngle, Angle topAngle, Angle baseAngle, Notes notes) implements HeightReading {

	private static final double STEEP = Math.toRadians(60);

	private static final double TOO_CLOSE = 0.7;

	public TangentHeight {
		if (horizontalDistance != null) {
			if (slopeDistance != null || slopeAngle != null) {
				throw new InvalidReadingException("horizontalDistance", Flaw.CONTRADICTION,
						"must not be given beside slopeDistance or slopeAngle");
			}
			horizontalDistance.positive("horizontalDistance");
		}
		else if (slopeDistance == null || slopeAngle == null) {
			String path = (slopeDistance != null) ? "slopeAngle"
					: (slopeAngle != null) ? "slopeDistance" : "horizontalDistance";
			throw new InvalidReadingException(path, Flaw.MISSING,
					"must be given: horizontalDistance, or slopeDistance with slopeAngle");
		}
		else {
			slopeDistance.positive("slopeDistance");
		}
		Sight.requireTopAboveBase(topAngle, baseAngle);
	}

	public static TangentHeight level(Length horizontalDistance, Angle topAngle, Angle baseAngle, Notes notes) {
		return new TangentHeight(horizontalDistance, null, null, topAngle, baseAngle, notes);
	}

	public static TangentHeight alongSlope(Length slopeDistance, Angle slopeAngle, Angle topAngle, Angle baseAngle,
			Notes notes) {
		return new TangentHeight(null, slopeDistance, slopeAngle, topAngle, baseAngle, notes);
	}

	/** In the unit of the distance; the tangents also of a scale of 66ths. */
	public static double height(double horizontalDistance, double topTangent, double baseTangent) {
		double rise = Figures.positive("rise", topTangent - baseTangent);
		return Figures.positive("horizontalDistance", horizontalDistance) * rise;
	}

	/**
	 * With the distance measured along the line of sight to the base, whose angle then
	 * serves twice: X = L cos b.
	 * @param lineToBase in feet
	 */
	public static Estimate byLineToBase(Estimate lineToBase, Angle topAngle, Angle baseAngle) {
		Sight.requireTopAboveBase(topAngle, baseAngle);
		double l = Figures.positive("lineToBase", lineToBase.value());
		Estimate a = Figure.radians(topAngle);
		Estimate b = Figure.radians(baseAngle);
		double rise = topAngle.tangent() - baseAngle.tangent();
		double x = l * Math.cos(b.value());
		double byBase = -l * Math.sin(b.value()) * rise - l / Math.cos(b.value());
		return Figure
			.height(height(x, topAngle.tangent(), baseAngle.tangent()),
					Budget.of(Budget.term("L", x * rise / l, lineToBase),
							Budget.term("a", x * Sight.secantSquared(topAngle), a), Budget.term("b", byBase, b)))
			.estimate();
	}

	/**
	 * What this method reads where the top stands off toward the observer (away if
	 * negative) and the distance was taken to the stem; in one unit.
	 * @param topAboveEye true height of the top above the eye
	 * @param eyeAboveBase height of the eye above the base
	 */
	public static double readWithTopOffset(double topAboveEye, double distanceToStem, double offset,
			double eyeAboveBase) {
		double toTop = Figures.positive("distanceToTop", distanceToStem - offset);
		return topAboveEye * distanceToStem / toTop + eyeAboveBase;
	}

	@Override
	public Method method() {
		return Method.TANGENT;
	}

	@Override
	public Estimate estimate() {
		return figure().estimate();
	}

	private Figure figure() {
		double rise = this.topAngle.tangent() - this.baseAngle.tangent();
		List<Budget.Term> terms = new ArrayList<>(distanceTerms(rise));
		double x = horizontalFeet();
		terms.add(Budget.term("a", x * Sight.secantSquared(this.topAngle), Figure.radians(this.topAngle)));
		terms.add(Budget.term("b", -x * Sight.secantSquared(this.baseAngle), Figure.radians(this.baseAngle)));
		return Figure.height(x * rise, new Budget(terms)).notBelow(InstrumentDefaults.TANGENT, allStated());
	}

	private List<Budget.Term> distanceTerms(double rise) {
		if (this.horizontalDistance != null) {
			Estimate x = this.horizontalDistance.estimate(LengthUnit.FT, InstrumentDefaults.DISTANCE);
			return List.of(Budget.term("X", rise, x));
		}
		Estimate l = Objects.requireNonNull(this.slopeDistance).estimate(LengthUnit.FT, InstrumentDefaults.DISTANCE);
		Estimate g = Figure.radians(Objects.requireNonNull(this.slopeAngle));
		return List.of(Budget.term("L", Math.cos(g.value()) * rise, l),
				Budget.term("g", -l.value() * Math.sin(g.value()) * rise, g));
	}

	private double horizontalFeet() {
		if (this.horizontalDistance != null) {
			return this.horizontalDistance.feet();
		}
		return Objects.requireNonNull(this.slopeDistance).feet()
				* Math.cos(Objects.requireNonNull(this.slopeAngle).radians());
	}

	private boolean allStated() {
		boolean distanceStated = (this.horizontalDistance != null) ? this.horizontalDistance.statesUncertainty()
				: Objects.requireNonNull(this.slopeDistance).statesUncertainty()
						&& Objects.requireNonNull(this.slopeAngle).statesUncertainty();
		return distanceStated && this.topAngle.statesUncertainty() && this.baseAngle.statesUncertainty();
	}

	@Override
	public List<WorkingLine> working() {
		Working working = new Working();
		if (this.horizontalDistance != null) {
			working.converted("X", this.horizontalDistance, LengthUnit.FT);
		}
		else {
			Length l = Objects.requireNonNull(this.slopeDistance);
			Angle g = Objects.requireNonNull(this.slopeAngle);
			working.converted("L", l, LengthUnit.FT)
				.line("X = L cos g", Working.feet(l) + " ft × cos(" + Working.degrees(g) + ")", horizontalFeet(),
						LengthUnit.FT);
		}
		String numbers = "%s ft × (%s - %s)".formatted(Working.number(horizontalFeet()), Working.tangent(this.topAngle),
				Working.tangent(this.baseAngle));
		return working.then(figure().lines("X (tan a - tan b)", numbers));
	}

	@Override
	public List<Caution> cautions() {
		List<Caution> cautions = new ArrayList<>();
		if (this.topAngle.radians() > STEEP) {
			cautions.add(new Caution("sight-steep",
					"The sight to the top is steeper than 60 degrees: small errors of the angle count for much."));
		}
		if (horizontalFeet() < TOO_CLOSE * figure().value()) {
			cautions.add(new Caution("too-close",
					"Taken from closer than seven tenths of the height: a limb may hide the top, and the height reads high."));
		}
		return cautions;
	}

}

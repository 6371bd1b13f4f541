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
 * p. 9-53). A distance taped along a slope g is first laid level: X = L cos g; one ranged
 * along the sight to the base likewise, by its angle: X = L cos b. Of a leaning tree, or
 * one whose top stands off, X is the distance to the stem and m how much nearer the top
 * stands: H = (X - m) tan a - X tan b. An offset that isn't known is entered as 0 with
 * the uncertainty it deserves. Where the base is hidden a mark on the stem k above the
 * ground is sighted, and k added.
 *
 * @param horizontalDistance more than zero, or null
 * @param slopeDistance more than zero, or null
 * @param slopeAngle of the ground taped along, given with the slope distance
 * @param lineToBase along the lower sight, more than zero, or null
 * @param topAngle above the base angle
 * @param baseAngle negative if the base lies below the eye
 * @param topOffset how much nearer than the stem the top stands, level, negative if
 * farther, or null where the distance is to under the top
 * @param markAboveBase how far above the ground the lower sight met the stem, 0 or more,
 * or null for the base itself
 */
public record TangentHeight(@Nullable Length horizontalDistance, @Nullable Length slopeDistance,
		@Nullable Angle slopeAngle, @Nullable Length lineToBase, Angle topAngle, Angle baseAngle,
		@Nullable Length topOffset, @Nullable Length markAboveBase, Notes notes) implements HeightReading {

	private static final double STEEP = Math.toRadians(60);

	private static final double TOO_CLOSE = 0.7;

	public TangentHeight {
		requireOneDistance(horizontalDistance, slopeDistance, slopeAngle, lineToBase);
		Sight.requireMark(markAboveBase);
		if (topOffset == null) {
			Sight.requireTopAboveBase(topAngle, baseAngle);
		}
		else if (!(topOffset.feet() < levelFeet(horizontalDistance, slopeDistance, slopeAngle, lineToBase,
				baseAngle))) {
			throw new InvalidReadingException("topOffset", Flaw.OUT_OF_RANGE,
					"must be less than the distance but was " + topOffset.text());
		}
	}

	public TangentHeight(@Nullable Length horizontalDistance, @Nullable Length slopeDistance,
			@Nullable Angle slopeAngle, Angle topAngle, Angle baseAngle, Notes notes) {
		this(horizontalDistance, slopeDistance, slopeAngle, null, topAngle, baseAngle, null, null, notes);
	}

	private static void requireOneDistance(@Nullable Length horizontalDistance, @Nullable Length slopeDistance,
			@Nullable Angle slopeAngle, @Nullable Length lineToBase) {
		boolean sloped = slopeDistance != null || slopeAngle != null;
		if (horizontalDistance != null) {
			if (sloped || lineToBase != null) {
				throw new InvalidReadingException("horizontalDistance", Flaw.CONTRADICTION,
						"must not be given beside slopeDistance, slopeAngle or lineToBase");
			}
			horizontalDistance.positive("horizontalDistance");
		}
		else if (lineToBase != null) {
			if (sloped) {
				throw new InvalidReadingException("lineToBase", Flaw.CONTRADICTION,
						"must not be given beside slopeDistance or slopeAngle");
			}
			lineToBase.positive("lineToBase");
		}
		else if (slopeDistance == null || slopeAngle == null) {
			String path = (slopeDistance != null) ? "slopeAngle" : sloped ? "slopeDistance" : "horizontalDistance";
			throw new InvalidReadingException(path, Flaw.MISSING,
					"must be given: horizontalDistance, slopeDistance with slopeAngle, or lineToBase");
		}
		else {
			slopeDistance.positive("slopeDistance");
		}
	}

	private static double levelFeet(@Nullable Length level, @Nullable Length slope, @Nullable Angle slopeAngle,
			@Nullable Length lineToBase, Angle baseAngle) {
		if (level != null) {
			return level.feet();
		}
		return (lineToBase != null) ? lineToBase.feet() * Math.cos(baseAngle.radians())
				: Objects.requireNonNull(slope).feet() * Math.cos(Objects.requireNonNull(slopeAngle).radians());
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
		Length line = Length.of(lineToBase.value(), LengthUnit.FT, lineToBase.standardUncertainty());
		return new TangentHeight(null, null, null, line, topAngle, baseAngle, null, null, Notes.NONE).figure()
			.budgeted();
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
		double x = horizontalFeet();
		double toTop = x - Sight.feet(this.topOffset);
		double rise = this.topAngle.tangent() - this.baseAngle.tangent();
		Estimate b = Figure.radians(this.baseAngle);
		List<Budget.Term> terms = new ArrayList<>(distanceTerms(rise));
		terms.add(Budget.term("a", toTop * Sight.secantSquared(this.topAngle), Figure.radians(this.topAngle)));
		double byBase = -x * Sight.secantSquared(this.baseAngle);
		if (this.lineToBase != null) {
			// the base angle serves twice: X shrinks with it
			byBase -= this.lineToBase.feet() * Math.sin(b.value()) * rise;
		}
		terms.add(Budget.term("b", byBase, b));
		double height = x * rise;
		if (this.topOffset != null) {
			height -= this.topOffset.feet() * this.topAngle.tangent();
			terms.add(Budget.term("m", -this.topAngle.tangent(),
					this.topOffset.estimate(LengthUnit.FT, InstrumentDefaults.TOP_OFFSET)));
		}
		Sight.addMark(terms, this.markAboveBase);
		return Figure.height(height + Sight.feet(this.markAboveBase), new Budget(terms))
			.notBelow(InstrumentDefaults.TANGENT, allStated());
	}

	private List<Budget.Term> distanceTerms(double rise) {
		if (this.horizontalDistance != null) {
			return List.of(Budget.term("X", rise,
					this.horizontalDistance.estimate(LengthUnit.FT, InstrumentDefaults.DISTANCE)));
		}
		if (this.lineToBase != null) {
			return List.of(Budget.term("L", Math.cos(this.baseAngle.radians()) * rise,
					this.lineToBase.estimate(LengthUnit.FT, InstrumentDefaults.DISTANCE)));
		}
		Estimate l = Objects.requireNonNull(this.slopeDistance).estimate(LengthUnit.FT, InstrumentDefaults.DISTANCE);
		Estimate g = Figure.radians(Objects.requireNonNull(this.slopeAngle));
		return List.of(Budget.term("L", Math.cos(g.value()) * rise, l),
				Budget.term("g", -l.value() * Math.sin(g.value()) * rise, g));
	}

	private double horizontalFeet() {
		return levelFeet(this.horizontalDistance, this.slopeDistance, this.slopeAngle, this.lineToBase, this.baseAngle);
	}

	private boolean allStated() {
		return Sight.statesUncertainty(this.horizontalDistance) && Sight.statesUncertainty(this.slopeDistance)
				&& (this.slopeAngle == null || this.slopeAngle.statesUncertainty())
				&& Sight.statesUncertainty(this.lineToBase) && this.topAngle.statesUncertainty()
				&& this.baseAngle.statesUncertainty() && Sight.statesUncertainty(this.topOffset)
				&& Sight.statesUncertainty(this.markAboveBase);
	}

	@Override
	public List<WorkingLine> working() {
		Working working = new Working();
		distanceLines(working);
		working.sighted("a", this.topAngle).sighted("b", this.baseAngle);
		String x = Working.number(horizontalFeet());
		String top = Working.tangent(this.topAngle);
		String base = Working.tangent(this.baseAngle);
		if (this.topOffset == null) {
			return Sight.withMark(working, figure(), "X (tan a - tan b)", "%s ft × (%s - %s)".formatted(x, top, base),
					this.markAboveBase);
		}
		working.converted("m", this.topOffset, LengthUnit.FT);
		return Sight.withMark(working, figure(), "(X - m) tan a - X tan b",
				"(%s - %s) ft × %s - %s ft × %s".formatted(x, Working.feet(this.topOffset), top, x, base),
				this.markAboveBase);
	}

	private void distanceLines(Working working) {
		if (this.horizontalDistance != null) {
			working.converted("X", this.horizontalDistance, LengthUnit.FT);
			return;
		}
		boolean line = this.lineToBase != null;
		Length l = (this.lineToBase != null) ? this.lineToBase : Objects.requireNonNull(this.slopeDistance);
		Angle angle = line ? this.baseAngle : Objects.requireNonNull(this.slopeAngle);
		working.converted("L", l, LengthUnit.FT)
			.line(line ? "X = L cos b" : "X = L cos g", Working.feet(l) + " ft × cos(" + Working.degrees(angle) + ")",
					horizontalFeet(), LengthUnit.FT);
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

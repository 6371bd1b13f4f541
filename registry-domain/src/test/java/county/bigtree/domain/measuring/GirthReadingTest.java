package county.bigtree.domain.measuring;

import java.util.List;

import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.Length;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static county.bigtree.domain.quantity.LengthUnit.CM;
import static county.bigtree.domain.quantity.LengthUnit.FT;
import static county.bigtree.domain.quantity.LengthUnit.IN;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

class GirthReadingTest {

	private static final GirthNotes NONE = GirthNotes.NONE;

	@Test
	void aTapeIsTakenAtItsWord() {
		assertThat(new TapeGirth(Length.of(254, CM), NONE).estimate()).isEqualTo(new Estimate(100, 0.37));
		assertThat(new TapeGirth(Length.of(254, CM, 2.54), NONE).estimate()).isEqualTo(new Estimate(100, 1));
	}

	/** Common practice, no source; the sum of the parts was done by hand. */
	@Test
	void aStringAddsJoinsAndStretch() {
		StringGirth string = StringGirth.ofSticks(4, Length.of(36, IN, 0), Length.of(7.25, IN, 0.125), NONE);
		assertThat(string.estimate().value()).isEqualTo(151.25);
		assertThat(string.estimate().standardUncertainty()).isCloseTo(0.3422, within(1e-4));
	}

	/**
	 * Marks on a stick for a reach of 25 inches, computed from the tangent rays of a
	 * circle; C = π D.
	 */
	@ParameterizedTest
	@CsvSource({ "3.7139, 4", "12.4939, 16", "20.2260, 30", "26.4849, 44", "36.5525, 72" })
	void aBiltmoreStickReadsBackItsGraduation(double mark, double diameter) {
		double girth = BiltmoreGirth.ofReading(Length.of(mark, IN), Length.of(25, IN), NONE).estimate().value();
		assertThat(girth / Math.PI).isCloseTo(diameter, within(2e-4));
	}

	/** The same geometry, differentiated by hand: u(S) = 0.1 in, u(E) = 0.5 in. */
	@ParameterizedTest
	@CsvSource({ "10, 0.4461", "20, 0.6501", "40, 1.3353", "60, 2.2427" })
	void aDiameterReadOffAStickIsAsUnsureAsTheMarkAndTheReach(double diameter, double u) {
		assertThat(BiltmoreGirth.ofDiameter(Length.of(diameter, IN), NONE).estimate().standardUncertainty())
			.isCloseTo(u, within(1e-4));
	}

	/**
	 * Perimeters of ellipses, by the complete elliptic integral (C library and SciPy).
	 */
	@ParameterizedTest
	@CsvSource({ "40, 30, 108.8280, 109.9557, 110.5175, 111.0721", "36, 34, 109.9109, 109.9557, 109.9782, 110.0006",
			"30, 50, 121.6734, 125.6637, 127.6350, 129.5312" })
	void meansOfTwoDiametersLieInOrder(double d1, double d2, double geometric, double arithmetic, double ellipse,
			double quadratic) {
		CaliperPair pair = new CaliperPair(d1, d2);
		assertThat(pair.geometricGirth()).isCloseTo(geometric, within(1e-4));
		assertThat(pair.arithmeticGirth()).isCloseTo(arithmetic, within(1e-4));
		assertThat(pair.ellipseGirth()).isCloseTo(ellipse, within(1e-4));
		assertThat(pair.quadraticGirth()).isCloseTo(quadratic, within(1e-4));
	}

	/** The exact ratio for a cylinder cut by a plane. */
	@ParameterizedTest
	@CsvSource({ "0, 1", "2, 1.000305", "8, 1.004920", "15, 1.017715", "20, 1.032338" })
	void aTiltedTapeReadsTooMuch(double degrees, double factor) {
		assertThat(TapeTilt.factor(degrees)).isCloseTo(factor, within(1e-6));
	}

	@Test
	void theWorkingShowsEachStep() {
		List<WorkingLine> lines = BiltmoreGirth.ofReading(Length.of(50.8, CM), Length.of(25, IN), NONE).working();
		assertThat(lines).extracting(WorkingLine::formula)
			.containsExactly("S in in", "D = S (S + √(S² + 4 E²)) / (2 E)", "C = π D",
					"u(C) = √((∂C/∂S u(S))² + (∂C/∂E u(E))²)");
		assertThat(lines.get(1).numbers()).isEqualTo("20 × (20 + √(20² + 4 × 25²)) / (2 × 25)");
		assertThat(lines.get(1).result()).isEqualTo("29.5407 in");
		assertThat(lines.get(2).result()).isEqualTo("92.8047 in");
		assertThat(new DiameterGirth(List.of(Length.of(40, IN), Length.of(30, IN)), NONE).working().get(0).numbers())
			.isEqualTo("π × (40 in + 30 in) / 2");
		assertThat(StringGirth.ofSticks(4, Length.of(36, IN), Length.of(7.25, IN), NONE).working().get(0).numbers())
			.isEqualTo("4 × 36 in + 7.25 in");
	}

	@Test
	void cautionsSayWhatTheUncertaintyCannot() {
		GirthNotes chest = new GirthNotes(Length.of(130, CM), null, null, null, null);
		GirthNotes metric = new GirthNotes(Length.of(137, CM), null, null, null, null);
		assertThat(codes(new TapeGirth(Length.of(150, IN), chest))).containsExactly("metric-breast-height");
		GirthNotes low = new GirthNotes(Length.of(3, FT), null, null, null, null);
		assertThat(codes(new TapeGirth(Length.of(150, IN), low))).containsExactly("not-at-breast-height");
		assertThat(codes(new TapeGirth(Length.of(150, IN), metric))).isEmpty();
		assertThat(codes(new DiameterGirth(List.of(Length.of(31, IN), Length.of(20, IN)), NONE)))
			.containsExactly("stem-out-of-round");
		assertThat(codes(BiltmoreGirth.ofReading(Length.of(40, IN), Length.of(31, IN), NONE)))
			.containsExactly("crude-instrument", "unusual-reach", "stem-too-wide");
	}

	private static List<String> codes(Reading reading) {
		return reading.cautions().stream().map(Caution::code).toList();
	}

	/**
	 * Half of 149 in; Forest Inventory and Analysis core field guide, 5.9.2, from memory.
	 */
	@Test
	void halfAGirthIsDoubledWithItsUncertainty() {
		HalfGirth half = new HalfGirth(Length.of(74.5, IN, 0.25), NONE);
		assertThat(half.estimate()).isEqualTo(new Estimate(149, 0.5));
		assertThat(half.working().get(0).numbers()).isEqualTo("2 × 74.5 in");
	}

	/** Even taper, worked by hand; no source. */
	@Test
	void breastHeightIsFoundBetweenTwoGirths() {
		TaperGirth taper = new TaperGirth(Length.of(150, IN, 0.25), Length.of(4, FT, 0.05), Length.of(146, IN, 0.25),
				Length.of(5, FT, 0.05), NONE);
		assertThat(taper.estimate().value()).isCloseTo(148, within(1e-9));
		assertThat(taper.estimate().standardUncertainty()).isCloseTo(0.2264, within(1e-4));
		assertThat(taper.working().get(0).numbers()).isEqualTo("150 in + (146 - 150) in × (4.5 - 4) / (5 - 4)");
		Length girth = Length.of(150, IN);
		refused("lowerHeight", "out-of-range",
				() -> new TaperGirth(girth, Length.of(4.5, FT), girth, Length.of(5, FT), NONE));
		refused("upperHeight", "out-of-range",
				() -> new TaperGirth(girth, Length.of(4, FT), girth, Length.of(4.5, FT), NONE));
		refused("upperHeight", "out-of-range",
				() -> new TaperGirth(girth, Length.of(3, FT), girth, Length.of(5.5, FT), NONE));
	}

	/** Common practice, no source; the sum of squares was done by hand. */
	@Test
	void aTreeOfSeveralStemsCountsAsItsLargest() {
		StemsGirth stems = new StemsGirth(List.of(Length.of(60, IN), Length.of(8, FT), Length.of(40, IN)), NONE);
		assertThat(stems.estimate()).isEqualTo(new Estimate(96, 0.37));
		assertThat(stems.largest()).isEqualTo(Length.of(8, FT));
		assertThat(stems.atRootCollar().value()).isCloseTo(Math.sqrt(60 * 60 + 96 * 96 + 40 * 40) / Math.PI,
				within(1e-9));
		assertThat(codes(stems)).containsExactly("several-stems");
		assertThat(stems.working()).extracting(WorkingLine::numbers).contains("max(60 in, 96 in, 40 in)");
		refused("stems", "wrong-count", () -> new StemsGirth(List.of(Length.of(1, FT)), NONE));
		refused("stems/1/value", "not-positive",
				() -> new StemsGirth(List.of(Length.of(1, FT), Length.of(0, FT)), NONE));
	}

	/** The exact ratio for a cylinder cut by a plane: 150 in read at 10 degrees. */
	@Test
	void aMeasuredTiltIsTakenOff() {
		TapeGirth tilted = new TapeGirth(Length.of(151.1592, IN), Angle.degrees(-10), NONE);
		assertThat(tilted.estimate().value()).isCloseTo(150, within(1e-3));
		assertThat(tilted.working()).extracting(WorkingLine::formula)
			.startsWith("f = (2 / π) E(sin t) / cos t", "C = R / f");
		assertThat(tilted.working().get(0).result()).isEqualTo("1.00773");
		refused("tilt", "out-of-range", () -> new TapeGirth(Length.of(1, FT), Angle.degrees(45), NONE));
	}

	/** By hand: 5 degrees are 0.0873; θ² / 12 and θ² / 4 √(4 / 45) of 150 in. */
	@Test
	void aTiltThatIsNotKnownIsABiasAndAnUncertainty() {
		Estimate off = TapeTilt.unknownTilt(150, Math.toRadians(5));
		assertThat(off.value()).isCloseTo(0.0952, within(1e-4));
		assertThat(off.standardUncertainty()).isCloseTo(0.0851, within(1e-4));
	}

	@Test
	void theSlopeOfATiltedTapeIsThatOfItsFactor() {
		for (double t : new double[] { -0.6, -0.1, 0.02, 0.3, 0.75 }) {
			double step = 1e-5;
			double secant = (TapeTilt.factor(Math.toDegrees(Math.abs(t + step)))
					- TapeTilt.factor(Math.toDegrees(Math.abs(t - step)))) / (2 * step);
			assertThat(TapeTilt.slope(t)).isCloseTo(secant, within(1e-6));
		}
		assertThat(TapeTilt.slope(0)).isZero();
	}

	/**
	 * Welch-Satterthwaite (JCGM 100:2008, G.4.1): two diameters, one repeated; by hand.
	 */
	@Test
	void degreesOfFreedomComeThroughToTheGirth() {
		Length repeated = Length.repeats(Length.of(40, IN, 0), Length.of(41, IN, 0), Length.of(42, IN, 0));
		Estimate girth = new DiameterGirth(List.of(repeated, Length.of(30, IN, 1)), NONE).estimate();
		double scatter = 1 / Math.sqrt(3);
		assertThat(girth.standardUncertainty()).isCloseTo(Math.PI / 2 * Math.sqrt(1.0 / 3 + 1), within(1e-9));
		assertThat(girth.degreesOfFreedom()).isCloseTo(2 * Math.pow(1.0 / 3 + 1, 2) / Math.pow(scatter, 4),
				within(1e-9));
		assertThat(new TapeGirth(Length.of(100, IN), NONE).estimate().degreesOfFreedom()).isInfinite();
	}

	@Test
	void refusalsNameTheEntry() {
		Length foot = Length.of(1, FT);
		Length none = Length.of(0, FT);
		refused("girth/value", "not-positive", () -> new TapeGirth(none, NONE));
		refused("girth", "not-positive", () -> new TapeGirth(Length.feetAndInches(0, 0), NONE));
		refused("length", "missing", () -> string(null, null, null, null));
		refused("length", "contradiction", () -> string(foot, 3, foot, none));
		refused("sticks", "missing", () -> string(null, null, foot, none));
		refused("stickLength", "missing", () -> string(null, 3, null, none));
		refused("rest", "missing", () -> string(null, 3, foot, null));
		refused("sticks", "out-of-range", () -> string(null, -1, foot, none));
		refused("rest", "out-of-range", () -> string(null, 3, foot, foot));
		refused("rest/value", "not-positive", () -> string(null, 0, foot, none));
		refused("diameters", "wrong-count", () -> new DiameterGirth(List.of(), NONE));
		refused("diameters", "wrong-count", () -> new DiameterGirth(List.of(foot, foot, foot), NONE));
		refused("diameters/1/value", "not-positive", () -> new DiameterGirth(List.of(foot, none), NONE));
		refused("diameterRead", "missing", () -> new BiltmoreGirth(null, null, null, NONE));
		refused("diameterRead", "contradiction", () -> new BiltmoreGirth(foot, foot, foot, NONE));
		refused("reach", "missing", () -> new BiltmoreGirth(null, foot, null, NONE));
		refused("stickReading", "missing", () -> new BiltmoreGirth(null, null, foot, NONE));
		refused("heightAboveGround/value", "not-positive", () -> new GirthNotes(none, null, null, null, null));
	}

	private static StringGirth string(@Nullable Length length, @Nullable Integer sticks, @Nullable Length stickLength,
			@Nullable Length rest) {
		return new StringGirth(length, sticks, stickLength, rest, NONE);
	}

	private static void refused(String path, String code, ThrowingCallable making) {
		assertThatExceptionOfType(InvalidReadingException.class).isThrownBy(making)
			.satisfies((ex) -> assertThat(ex.path() + " " + ex.code()).isEqualTo(path + " " + code));
	}

}

package county.bigtree.domain.quantity;

import java.util.List;

import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

class LengthTest {

	private static final DefaultUncertainty EIGHTH = (inches) -> 0.125;

	/** Exact by definition: NIST SP 811 (2008), appendix B. */
	@ParameterizedTest
	@CsvSource({ "IN, 0.0254", "FT, 0.3048", "YD, 0.9144", "MM, 0.001", "CM, 0.01", "M, 1" })
	void knowsItsUnits(LengthUnit unit, double metres) {
		assertThat(Length.of(1, unit).metres()).isEqualTo(metres);
		assertThat(LengthUnit.find(unit.code())).contains(unit);
	}

	@Test
	void convertsWithoutLoss() {
		assertThat(Length.of(91.4, LengthUnit.FT).feet()).isEqualTo(91.4);
		assertThat(Length.of(254, LengthUnit.CM).inches()).isEqualTo(100);
		assertThat(Length.of(12, LengthUnit.YD).feet()).isEqualTo(36);
	}

	@Test
	void takesFeetAndInches() {
		Length length = Length.feetAndInches(12, 3.5);
		assertThat(length.inches()).isEqualTo(147.5);
		assertThat(length.feet()).isCloseTo(12.291667, within(1e-6));
		assertThat(length.text()).isEqualTo("12 ft 3.5 in");
	}

	@Test
	void addsSegmentsAndTheirSquaredUncertainties() {
		Length length = Length.segments(Length.of(30, LengthUnit.FT), Length.of(7, LengthUnit.FT, 0.5));
		assertThat(length.feet()).isEqualTo(37);
		assertThat(length.text()).isEqualTo("30 ft + 7 ft");
		assertThat(length.estimate(LengthUnit.FT, (inches) -> 0.1 * inches).standardUncertainty())
			.isCloseTo(Math.sqrt(9 + 0.25), within(1e-12));
	}

	/**
	 * 1 ft or 3 %: 30 and 7 ft are worth what 37 ft are, 1.11 ft; 100 and 100 ft what 200
	 * are, 6 ft, as one tape stretches alike in both; two short ends of 5 ft no more than
	 * the 1 ft of one. Of a slope the tape's part follows the level length. By hand.
	 */
	@Test
	void segmentsOfOneTapeAreWorthWhatTheirSumIs() {
		DefaultUncertainty edge = (inches) -> Math.max(12, 0.03 * inches);
		assertThat(u(edge, Length.of(30, LengthUnit.FT), Length.of(7, LengthUnit.FT))).isCloseTo(1.11, within(1e-12));
		assertThat(u(edge, Length.of(100, LengthUnit.FT), Length.of(100, LengthUnit.FT))).isCloseTo(6, within(1e-12));
		assertThat(u(edge, Length.of(5, LengthUnit.FT), Length.of(5, LengthUnit.FT))).isCloseTo(1, within(1e-12));
		assertThat(
				u(edge, Length.of(100, LengthUnit.FT), Length.of(100, LengthUnit.FT), Length.of(50, LengthUnit.FT, 8)))
			.isCloseTo(10, within(1e-12));
		Length sloped = Length.alongSlope(Length.of(100, LengthUnit.FT), Angle.degrees(60, 0));
		assertThat(u(edge, sloped, Length.of(100, LengthUnit.FT))).isCloseTo(4.5, within(1e-9));
	}

	private static double u(DefaultUncertainty byDefault, Length... parts) {
		return Length.segments(parts).estimate(LengthUnit.FT, byDefault).standardUncertainty();
	}

	/**
	 * Three readings of one tape to an eighth: mean 150, s / √3 = 0.1443, with 1/8 / √12
	 * = 0.0361 in quadrature 0.1488; 2 (0.1488 / 0.1443)⁴ degrees of freedom. By hand,
	 * after JCGM 100:2008, 4.2.3, F.2.2.1 and G.4.1.
	 */
	@Test
	void repeatsGiveTheirMeanWithTheStandardErrorOfTheMean() {
		double resolution = 0.125 / Math.sqrt(12);
		Length repeated = Length.repeats(Length.of(150, LengthUnit.IN, resolution),
				Length.of(150.25, LengthUnit.IN, resolution), Length.of(149.75, LengthUnit.IN, resolution));
		Estimate estimate = repeated.estimate(LengthUnit.IN, EIGHTH);
		assertThat(estimate.value()).isEqualTo(150);
		assertThat(estimate.standardUncertainty()).isCloseTo(0.1488, within(1e-4));
		assertThat(estimate.degreesOfFreedom()).isCloseTo(2.2578, within(1e-3));
		assertThat(repeated.text()).startsWith("mean of (150 in, 150.25 in, 149.75 in)");
	}

	@Test
	void repeatsAreNotTrustedMoreThanTheInstrument() {
		Length close = Length.repeats(Length.of(10, LengthUnit.IN), Length.of(10.0625, LengthUnit.IN));
		assertThat(close.estimate(LengthUnit.IN, EIGHTH)).isEqualTo(new Estimate(10.03125, 0.125));
		Length apart = Length.repeats(Length.of(10, LengthUnit.IN), Length.of(12, LengthUnit.IN));
		assertThat(apart.estimate(LengthUnit.IN, EIGHTH)).isEqualTo(new Estimate(11, 1, 1));
	}

	/** L cos g: 102 ft at 8 degrees, 40 ft at 25 %; differentiated by hand. */
	@Test
	void laysSlopesLevel() {
		Length taped = Length.alongSlope(Length.of(102, LengthUnit.FT, 0.5), Angle.degrees(-8, 0.25));
		assertThat(taped.feet()).isCloseTo(101.0073, within(1e-4));
		assertThat(Length.alongSlope(Length.of(40, LengthUnit.FT), Angle.percent(25)).feet()).isCloseTo(38.8057,
				within(1e-4));
		double byAngle = 102 * Math.sin(Math.toRadians(8)) * Math.toRadians(0.25);
		assertThat(taped.estimate(LengthUnit.FT, EIGHTH).standardUncertainty())
			.isCloseTo(Math.hypot(0.5 * Math.cos(Math.toRadians(8)), byAngle), within(1e-12));
		assertThat(taped.text()).isEqualTo("(102 ft) × cos(-8 deg)");
	}

	@Test
	void refusesRepeatsAndSlopesThatMakeNoSense() {
		Length foot = Length.of(1, LengthUnit.FT);
		Length twice = Length.repeats(foot, foot);
		Length sloped = Length.alongSlope(foot, Angle.degrees(5));
		refused("repeats", () -> Length.repeats(foot));
		refused("repeats/1", () -> Length.repeats(foot, twice));
		refused("repeats/1", () -> Length.repeats(foot, Length.of(-1, LengthUnit.FT)));
		refused("along", () -> Length.alongSlope(twice, Angle.degrees(5)));
		refused("along", () -> Length.alongSlope(sloped, Angle.degrees(5)));
		refused("along/value", () -> Length.alongSlope(Length.of(0, LengthUnit.FT), Angle.degrees(5)));
		refused("segments/0", () -> Length.segments(twice, foot));
	}

	private static void refused(String path, ThrowingCallable making) {
		assertThatExceptionOfType(InvalidReadingException.class).isThrownBy(making)
			.satisfies((ex) -> assertThat(ex.path()).isEqualTo(path));
	}

	@Test
	void prefersTheUncertaintyStatedToTheDefault() {
		assertThat(Length.of(10, LengthUnit.FT, 0.25).estimate(LengthUnit.IN, EIGHTH)).isEqualTo(new Estimate(120, 3));
		assertThat(Length.of(10, LengthUnit.FT).estimate(LengthUnit.IN, EIGHTH)).isEqualTo(new Estimate(120, 0.125));
		assertThat(new Length.FeetAndInches(1, 0, 0.5).estimate(LengthUnit.IN, EIGHTH))
			.isEqualTo(new Estimate(12, 0.5));
	}

	@ParameterizedTest
	@CsvSource({ "NaN, , value, not-a-number", "-Infinity, , value, not-a-number", "1e9, , value, out-of-range",
			"1, -0.1, standardUncertainty, out-of-range", "1, NaN, standardUncertainty, not-a-number" })
	void refusesWhatIsNoLength(double value, Double u, String path, String code) {
		assertThatExceptionOfType(InvalidReadingException.class)
			.isThrownBy(() -> new Length.Single(value, LengthUnit.FT, u))
			.satisfies((ex) -> assertThat(List.of(ex.path(), ex.code())).containsExactly(path, code));
	}

	@ParameterizedTest
	@CsvSource({ "12, 12, inches", "12, -0.1, inches", "-1, 3, feet", "12.5, 3, feet", "NaN, 3, feet" })
	void refusesFeetAndInchesThatNobodyWrites(double feet, double inches, String path) {
		assertThatExceptionOfType(InvalidReadingException.class).isThrownBy(() -> Length.feetAndInches(feet, inches))
			.satisfies((ex) -> assertThat(ex.path()).isEqualTo(path));
	}

	@Test
	void refusesSegmentsThatDoNotAddUp() {
		Length foot = Length.of(1, LengthUnit.FT);
		assertThatExceptionOfType(InvalidReadingException.class).isThrownBy(() -> Length.segments(foot))
			.withMessageContaining("two or more");
		assertThatExceptionOfType(InvalidReadingException.class)
			.isThrownBy(() -> Length.segments(foot, Length.of(0, LengthUnit.FT)))
			.withMessageStartingWith("segments/1");
		assertThatExceptionOfType(InvalidReadingException.class)
			.isThrownBy(() -> Length.segments(foot, Length.segments(foot, foot)))
			.withMessageStartingWith("segments/1");
	}

	@Test
	void carriesARefusalOutwardsWithItsPath() {
		InvalidReadingException inner = new InvalidReadingException("value", Flaw.NOT_POSITIVE, "must be more");
		assertThat(inner.within("axes/1").within("crown").path()).isEqualTo("crown/axes/1/value");
		assertThat(new InvalidReadingException("", Flaw.MISSING, "none").within("crown").path()).isEqualTo("crown");
	}

}

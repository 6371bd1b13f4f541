package county.bigtree.domain.measuring;

import java.util.List;

import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.Length;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static county.bigtree.domain.quantity.LengthUnit.FT;
import static county.bigtree.domain.quantity.LengthUnit.IN;
import static county.bigtree.domain.quantity.LengthUnit.M;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

class HeightReadingTest {

	private static final Notes NONE = Notes.NONE;

	/** scoutlibrary.in, "Height Estimation", the shadow example: prints 6.92. */
	@Test
	void aShadowStandsToItsTreeAsAStaffToItsOwn() {
		ShadowHeight shadow = new ShadowHeight(Length.of(40, M), Length.of(1.73, M), Length.of(10, M), null, NONE);
		assertThat(FT.to(M, shadow.estimate().value())).isCloseTo(6.92, within(1e-9));
	}

	/** Public do-it-yourself questions and answers, thread 7100 (2018): prints 429 in. */
	@Test
	void aStickMeasuresByAKnownSpacing() {
		StickHeight stick = new StickHeight(Length.of(6.125, IN), Length.of(1, IN), Length.of(70, IN), NONE);
		assertThat(FT.to(IN, stick.estimate().value())).isCloseTo(429, within(0.5));
	}

	/**
	 * DeYoung, Forest Measurements: An Applied Approach (Open Oregon), section 2.3,
	 * example 1: 62 ft above the eye and 8 ft below make 70 ft.
	 */
	@Test
	void aClinometerInPercentAddsAboveAndBelow() {
		TangentHeight tangent = TangentHeight.level(Length.of(50, FT), Angle.percent(124), Angle.percent(-16), NONE);
		assertThat(tangent.estimate().value()).isCloseTo(70, within(1e-9));
		assertThat(tangent.working().get(0).numbers()).isEqualTo("50 ft × ((+124 %) - (-16 %))");
		assertThat(tangent.working().get(0).result()).isEqualTo("70 ft");
	}

	/**
	 * Hand clinometer user manual, English part, slope correction: 25 m (82 ft) up a
	 * slope of 9 degrees; prints 80.9 ft for the level distance, 12.8 m and 42 ft for the
	 * height.
	 */
	@Test
	void aSlopingDistanceIsLaidLevelFirst() {
		TangentHeight metric = slope(Length.of(25, M));
		TangentHeight feet = slope(Length.of(82, FT));
		assertThat(FT.to(M, metric.estimate().value())).isCloseTo(12.8, within(0.05));
		assertThat(feet.estimate().value()).isCloseTo(42, within(0.5));
		WorkingLine level = feet.working().get(0);
		assertThat(level.formula()).isEqualTo("X = L cos g");
		assertThat(level.value()).isCloseTo(80.9, within(0.1));
	}

	private static TangentHeight slope(Length distance) {
		return TangentHeight.alongSlope(distance, Angle.degrees(9), Angle.percent(29), Angle.percent(-23), NONE);
	}

	/**
	 * Signs as US Army TM 5-6675-322-14, p. 9-53, has them: unlike add, like subtract.
	 * The figures are computed.
	 */
	@ParameterizedTest
	@CsvSource({ "120, 70, 12, 69.6", "90, -4, -110, 95.4", "100, 100, 0, 100" })
	void oneRuleServesAllSlopes(double distance, double top, double base, double height) {
		assertThat(TangentHeight.level(Length.of(distance, FT), Angle.percent(top), Angle.percent(base), NONE)
			.estimate()
			.value()).isCloseTo(height, within(1e-9));
	}

	/**
	 * A tree built from coordinates: 100 ft high, its top 15 ft off away from the eye.
	 */
	@Test
	void theSineMethodSeesThroughALean() {
		SineHeight sine = new SineHeight(Length.of(127.4755, FT), Angle.degrees(48.1798), Length.of(100.1249, FT),
				Angle.degrees(-2.8624), NONE);
		assertThat(sine.estimate().value()).isCloseTo(100, within(1e-3));
	}

	/** Built from coordinates: a top 100 ft up, seen from 100 and from 150 ft. */
	@Test
	void twoStationsFindTheDistanceThemselves() {
		TwoStationHeight height = new TwoStationHeight(Length.of(50, FT), Angle.degrees(45), Angle.degrees(33.690068),
				Angle.degrees(0), NONE);
		assertThat(height.estimate().value()).isCloseTo(100, within(1e-3));
		TwoStationHeight below = new TwoStationHeight(Length.of(60, FT), Angle.degrees(50), Angle.degrees(35),
				Angle.degrees(-4), NONE);
		assertThat(below.estimate().value()).isCloseTo(107.8359, within(1e-4));
	}

	/** Common practice: 45 degrees to the top alone leaves out the eye's height. */
	@Test
	void anEqualArmAddsTheOffsetOfItsBase() {
		assertThat(new EqualArmHeight(Length.of(78, FT), Length.of(5.2, FT), NONE).estimate().value()).isCloseTo(83.2,
				within(1e-9));
		assertThat(new EqualArmHeight(Length.of(72, FT), null, NONE).estimate()).isEqualTo(new Estimate(72, 3.6));
	}

	@Test
	void theLeastUncertaintyGivesWayOnlyToTheMeasurersOwn() {
		StickHeight silent = new StickHeight(Length.of(12, IN), Length.of(1, IN), Length.of(8, FT), NONE);
		StickHeight stated = new StickHeight(Length.of(12, IN, 0.05), Length.of(1, IN, 0.02), Length.of(8, FT, 0.02),
				NONE);
		assertThat(silent.estimate().standardUncertainty()).isGreaterThan(0.05 * 96);
		assertThat(stated.estimate().standardUncertainty()).isCloseTo(1.9759, within(1e-4));
		TangentHeight tangent = TangentHeight.level(Length.of(100, FT, 0.5), Angle.degrees(40, 0.25), Angle.degrees(-3),
				NONE);
		assertThat(tangent.estimate().standardUncertainty()).isCloseTo(0.03 * 89.1507, within(1e-4));
		assertThat(tangent.working().get(2).formula()).contains("not taken below");
	}

	/** Differentiated by hand: JCGM 100:2008, 5.1.2. */
	@Test
	void statedUncertaintiesArePropagated() {
		assertThat(TangentHeight.level(Length.of(50, FT, 0.5), Angle.degrees(60, 0.5), Angle.degrees(-5, 0.5), NONE)
			.estimate()
			.standardUncertainty()).isCloseTo(2.0167, within(1e-4));
		assertThat(TangentHeight.level(Length.of(50, FT, 0.25), Angle.percent(124, 1), Angle.percent(-16, 1), NONE)
			.estimate()
			.standardUncertainty()).isCloseTo(0.7890, within(1e-4));
	}

	@Test
	void cautionsSayWhatTheUncertaintyCannot() {
		assertThat(codes(TangentHeight.level(Length.of(40, FT), Angle.degrees(61), Angle.degrees(-3), NONE)))
			.containsExactly("sight-steep", "too-close");
		assertThat(codes(TangentHeight.level(Length.of(100, FT), Angle.degrees(45), Angle.degrees(-3), NONE)))
			.isEmpty();
		assertThat(codes(new ShadowHeight(Length.of(300, FT), Length.of(6, FT), Length.of(18, FT), null, NONE)))
			.containsExactly("sun-low");
		assertThat(codes(new ShadowHeight(Length.of(20, FT), Length.of(6, FT), Length.of(2, FT), null, NONE)))
			.containsExactly("sun-high");
		assertThat(codes(new StickHeight(Length.of(9, IN), Length.of(0.4, IN), Length.of(6, FT), NONE)))
			.containsExactly("reference-short");
		assertThat(codes(
				new TwoStationHeight(Length.of(20, FT), Angle.degrees(45), Angle.degrees(38), Angle.degrees(-2), NONE)))
			.containsExactly("stations-close");
		assertThat(codes(new StatedHeight(Length.of(20, M), NONE))).containsExactly("method-unknown");
	}

	private static List<String> codes(Reading reading) {
		return reading.cautions().stream().map(Caution::code).toList();
	}

	@Test
	void refusalsNameTheEntry() {
		Length foot = Length.of(1, FT);
		Length none = Length.of(0, FT);
		Angle up = Angle.degrees(30);
		Angle down = Angle.degrees(-3);
		refused("height/value", () -> new PoleHeight(none, NONE));
		refused("height/value", () -> new StatedHeight(none, NONE));
		refused("treeShadow/value", () -> new ShadowHeight(none, foot, foot, null, NONE));
		refused("referenceHeight/value", () -> new ShadowHeight(foot, none, foot, null, NONE));
		refused("treeOnStick", () -> new StickHeight(foot, Length.of(13, IN), foot, NONE));
		refused("referenceOnStick/value", () -> new StickHeight(foot, none, foot, NONE));
		refused("distance/value", () -> new EqualArmHeight(none, null, NONE));
		refused("baseOffset", () -> new EqualArmHeight(foot, Length.of(-1, FT), NONE));
		refused("horizontalDistance", () -> new TangentHeight(null, null, null, up, down, NONE));
		refused("horizontalDistance", () -> new TangentHeight(foot, foot, up, up, down, NONE));
		refused("slopeAngle", () -> new TangentHeight(null, foot, null, up, down, NONE));
		refused("slopeDistance", () -> new TangentHeight(null, null, up, up, down, NONE));
		refused("slopeDistance/value", () -> TangentHeight.alongSlope(none, up, up, down, NONE));
		refused("topAngle/value", () -> TangentHeight.level(foot, down, down, NONE));
		refused("topAngle/value", () -> new SineHeight(foot, down, foot, up, NONE));
		refused("topDistance", () -> new SineHeight(foot, up, Length.of(10, FT), Angle.degrees(20), NONE));
		refused("farTopAngle/value", () -> new TwoStationHeight(foot, up, down, down, NONE));
		refused("nearTopAngle/value", () -> new TwoStationHeight(foot, up, up, down, NONE));
		refused("nearTopAngle/value", () -> new TwoStationHeight(foot, up, Angle.degrees(20), Angle.degrees(31), NONE));
	}

	@Test
	void entriesThatComeToNoTreeAreRefusedAtTheReduction() {
		StickHeight absurd = new StickHeight(Length.of(9000, M), Length.of(1e-9, M), Length.of(9000, M), NONE);
		refused("", absurd::reduce);
	}

	private static void refused(String path, ThrowingCallable making) {
		assertThatExceptionOfType(InvalidReadingException.class).isThrownBy(making)
			.satisfies((ex) -> assertThat(ex.path()).isEqualTo(path));
	}

}

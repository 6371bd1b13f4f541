package county.bigtree.domain.measuring;

import java.util.List;

import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.AngleUnit;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.Length;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

import static county.bigtree.domain.quantity.LengthUnit.FT;
import static county.bigtree.domain.quantity.LengthUnit.IN;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

/**
 * Heights of trees that don't stand plumb on level ground in full view.
 */
class HeightCircumstancesTest {

	private static final Notes NONE = Notes.NONE;

	/**
	 * Tree of 100 ft, its top 15 ft off toward the observer, 100 ft out, eye at 5 ft:
	 * coordinates, no source.
	 */
	@Test
	void aTopThatStandsOffIsAllowedFor() {
		Angle top = Angle.degrees(Math.toDegrees(Math.atan(95.0 / 85)));
		Angle base = Angle.degrees(Math.toDegrees(Math.atan(-5.0 / 100)));
		TangentHeight naive = TangentHeight.level(Length.of(100, FT), top, base, NONE);
		assertThat(naive.estimate().value()).isCloseTo(116.7647, within(1e-4));
		assertThat(tangent(Length.of(100, FT), top, base, Length.of(15, FT), null).estimate().value()).isCloseTo(100,
				within(1e-9));
		assertThat(tangent(Length.of(100, FT), top, base, Length.of(15, FT), null).working())
			.extracting(WorkingLine::formula)
			.startsWith("H = (X - m) tan a - X tan b");
		refused("topOffset", () -> tangent(Length.of(100, FT), top, base, Length.of(100, FT), null));
	}

	/** (h / X) m / √3 for a top at most 15 ft off: h = 95, X = 100 gives 8.2272 ft. */
	@Test
	void anUnknownOffsetIsAnUncertainty() {
		TangentHeight height = tangent(Length.of(100, FT, 0), Angle.degrees(Math.toDegrees(Math.atan(95.0 / 100)), 0),
				Angle.degrees(0, 0), Length.of(0, FT, 15 / Math.sqrt(3)), null);
		assertThat(height.estimate().standardUncertainty()).isCloseTo(8.2272, within(1e-4));
	}

	/** Where the base is hidden: a mark 6 ft up is sighted. Coordinates, no source. */
	@Test
	void aHiddenBaseIsReachedByAMark() {
		Angle top = Angle.degrees(Math.toDegrees(Math.atan(95.0 / 100)));
		Angle mark = Angle.degrees(Math.toDegrees(Math.atan(1.0 / 100)));
		assertThat(tangent(Length.of(100, FT), top, mark, null, Length.of(6, FT)).estimate().value()).isCloseTo(100,
				within(1e-9));
		SineHeight sine = new SineHeight(Length.of(Math.hypot(95, 100), FT), top, null, Length.of(100, FT), mark,
				Length.of(6, FT), NONE);
		assertThat(sine.estimate().value()).isCloseTo(100, within(1e-9));
		assertThat(sine.working()).extracting(WorkingLine::formula).contains("H = Lt sin a - Xb tan b + k");
		refused("baseDistance", () -> new SineHeight(Length.of(100, FT), top, null, null, mark, null, NONE));
		refused("markAboveBase", () -> tangent(Length.of(100, FT), top, mark, null, Length.of(-1, FT)));
	}

	/** 150 ft at 42 degrees, base by tangent from 111 ft at -3.5: 107.1586; by hand. */
	@Test
	void theBaseLegMayBeLevel() {
		assertThat(new SineHeight(Length.of(150, FT), Angle.degrees(42), null, Length.of(111, FT), Angle.degrees(-3.5),
				null, NONE)
			.estimate()
			.value()).isCloseTo(107.1586, within(1e-4));
	}

	/** 102 ft along the sight to the base at -8 degrees, top at 38; by hand. */
	@Test
	void theLineToTheBaseGivesTheDistance() {
		TangentHeight height = new TangentHeight(null, null, null, Length.of(102, FT, 0.5), Angle.degrees(38, 0.25),
				Angle.degrees(-8, 0.25), null, null, NONE);
		assertThat(height.estimate().value()).isCloseTo(93.1112, within(1e-4));
		assertThat(height.estimate().standardUncertainty()).isCloseTo(0.9306, within(1e-4));
		assertThat(height.working()).extracting(WorkingLine::formula).contains("X = L cos b");
	}

	private static TangentHeight tangent(Length x, Angle top, Angle base, @Nullable Length offset,
			@Nullable Length mark) {
		return new TangentHeight(x, null, null, null, top, base, offset, mark, NONE);
	}

	/**
	 * Far eye 3 ft below the near one: 60 ft apart, 50 and 35 degrees give 94.5857 ft
	 * above the near eye. Top 15 ft off a tree of 100 ft: 85 ft to under the top.
	 * Coordinates.
	 */
	@Test
	void twoStationsNeedNotBeLevel() {
		TwoStationHeight below = stations(60, -3, 50, 35, Angle.degrees(0), null);
		assertThat(below.estimate().value()).isCloseTo(94.5857, within(1e-4));
		Angle base = Angle.degrees(Math.toDegrees(Math.atan(-5.0 / 100)));
		TwoStationHeight offset = stations(60, -3, 48.179830, 34.053269, base, Length.of(100, FT));
		assertThat(offset.estimate().value()).isCloseTo(100, within(1e-4));
		assertThat(offset.working()).extracting(WorkingLine::formula)
			.startsWith("X = (D tan a2 + dz) / (tan a1 - tan a2)", "H = X tan a1 - Xb tan b");
		refused("farTopAngle", () -> stations(60, -50, 50, 35, base, null));
	}

	private static TwoStationHeight stations(double apart, double higher, double near, double far, Angle base,
			@Nullable Length toBase) {
		return new TwoStationHeight(Length.of(apart, FT), Length.of(higher, FT), Angle.degrees(near),
				Angle.degrees(far), base, toBase, null, NONE);
	}

	@Test
	void stationsAlongASlopeAskForTheEyeHeights() {
		TwoStationHeight sloped = new TwoStationHeight(Length.alongSlope(Length.of(60, FT), Angle.degrees(4)),
				Angle.degrees(50), Angle.degrees(35), Angle.degrees(-3), NONE);
		assertThat(sloped.cautions()).extracting(Caution::code).containsExactly("eyes-not-level");
	}

	/**
	 * Tape of 70 ft down 6 degrees, pole of 6 ft with a shadow of 4.5: 85.5051 ft. From
	 * the bark of a stem of 150 in, 66 ft are 67.9894. By hand.
	 */
	@Test
	void shadowsLieOnSlopesAndBeginAtTheBark() {
		ShadowHeight down = new ShadowHeight(Length.of(70, FT), Length.of(6, FT), Length.of(4.5, FT), Angle.degrees(-6),
				null, null, NONE);
		assertThat(down.estimate().value()).isCloseTo(85.5051, within(1e-4));
		ShadowHeight bark = new ShadowHeight(Length.of(66, FT), Length.of(6, FT), Length.of(4.5, FT), null,
				Length.of(150, IN), null, NONE);
		assertThat(bark.estimate().value()).isCloseTo(67.9894 * 6 / 4.5, within(1e-3));
		assertThat(bark.working()).extracting(WorkingLine::formula).contains("Lt = s + C / (2 π)", "H = h Lt / Lr");
		assertThat(down.working()).extracting(WorkingLine::formula)
			.contains("Lt = s cos g", "z = s sin g", "H = h Lt / Lr + z");
	}

	/**
	 * Stick of 24 in at 25: 85 ft give 81.6; 72 ft with u(X) 1, u(s) 0.1, u(E) 0.5:
	 * 1.7767. By hand. A ruler of 20 in at 25 from 100 ft: 80, u 0.9798.
	 */
	@Test
	void aStickAtAStatedReachNeedNotBeAsLong() {
		assertThat(stick(Length.of(85, FT), Length.of(24, IN), Length.of(25, IN)).value()).isCloseTo(81.6,
				within(1e-9));
		assertThat(stick(Length.of(72, FT, 1), Length.of(25, IN, 0.1), Length.of(25, IN, 0.5)).standardUncertainty())
			.isCloseTo(1.7767, within(1e-4));
		EqualArmHeight stated = new EqualArmHeight(Length.of(100, FT, 0.5), Length.of(20, IN, 0.1),
				Length.of(25, IN, 0.25), Length.of(0, FT, 0), NONE);
		assertThat(stated.estimate().value()).isCloseTo(80, within(1e-9));
		assertThat(stated.estimate().standardUncertainty()).isCloseTo(0.9798, within(1e-4));
		assertThat(stated.working()).extracting(WorkingLine::formula).contains("H = X s / E + z");
		refused("reach", () -> new EqualArmHeight(Length.of(85, FT), Length.of(24, IN), null, null, NONE));
		refused("stickLength", () -> new EqualArmHeight(Length.of(85, FT), null, Length.of(24, IN), null, NONE));
	}

	private static Estimate stick(Length distance, Length stick, Length reach) {
		return new EqualArmHeight(distance, stick, reach, null, NONE).estimate();
	}

	/**
	 * Avery and Burkhart 2002, Forest Measurements, chapter on height, Merritt
	 * hypsometer: a log of 16 ft at 66 ft spans 6.06 in of a stick at 25 in; from memory.
	 */
	@Test
	void aGraduatedStickSpansALog() {
		assertThat(stick(Length.of(66, FT), Length.of(6.06, IN), Length.of(25, IN)).value()).isCloseTo(16,
				within(0.01));
	}

	/** Three sights of the top from 100 ft: 39, 40 and 41 degrees; by hand. */
	@Test
	void severalSightsAreShownAndCounted() {
		Angle top = Angle.repeated(List.of(39.0, 40.0, 41.0), AngleUnit.DEG, null);
		TangentHeight height = tangent(Length.of(100, FT, 0), top, Angle.degrees(-3, 0), null, null);
		assertThat(height.estimate().value()).isCloseTo(89.1507, within(1e-4));
		assertThat(height.working().get(0).numbers()).isEqualTo("mean of (39, 40, 41) deg");
		double u = 170.4088 * Math.toRadians(1 / Math.sqrt(3));
		TangentHeight certain = tangent(Length.of(100, FT, 0),
				Angle.repeated(List.of(39.0, 40.0, 41.0), AngleUnit.DEG, 0.0), Angle.degrees(-3, 0), null, null);
		assertThat(certain.estimate().standardUncertainty()).isCloseTo(u, within(1e-3));
		assertThat(certain.estimate().degreesOfFreedom()).isCloseTo(2, within(1e-9));
	}

	/** 40 ft at 3 degrees 39.9452; a tape of 112.3 + 2.5 - 0.4 = 114.4 ft; by hand. */
	@Test
	void aPoleMayLeanAndFallShort() {
		assertThat(new PoleHeight(Length.of(40, FT), Angle.degrees(3), null, NONE).estimate().value())
			.isCloseTo(39.9452, within(1e-4));
		PoleHeight tape = new PoleHeight(Length.of(112.3, FT), null, Length.of(2.1, FT), NONE);
		assertThat(tape.estimate().value()).isCloseTo(114.4, within(1e-9));
		assertThat(tape.working()).extracting(WorkingLine::formula).contains("H = L + z");
		refused("offset", () -> new PoleHeight(Length.of(40, FT), null, Length.of(-40, FT), NONE));
	}

	private static void refused(String path, ThrowingCallable making) {
		assertThatExceptionOfType(InvalidReadingException.class).isThrownBy(making)
			.satisfies((ex) -> assertThat(ex.path()).isEqualTo(path));
	}

}

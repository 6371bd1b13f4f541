package county.bigtree.domain.measuring;

import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleSupplier;

import county.bigtree.domain.points.Correlations;
import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static county.bigtree.domain.quantity.LengthUnit.FT;
import static county.bigtree.domain.quantity.LengthUnit.IN;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

/**
 * Uncertainties that no entry states, or that figures share, against seeded simulation
 * (the Monte Carlo method of JCGM 101:2008, small).
 */
class SimulatedUncertaintyTest {

	private static final int DRAWS = 60_000;

	private final Random random = new Random(101);

	/** Each join of the sticks errs by 0.05 in, the string stretches by 0.2 %. */
	@ParameterizedTest
	@CsvSource({ "1, 36, 7.25", "4, 36, 7.25", "12, 12, 3", "40, 39.37, 20" })
	void sticksAndARest(int sticks, double length, double rest) {
		double simulated = scatter(() -> {
			double joins = 0;
			for (int i = 0; i < sticks; i++) {
				joins += 0.05 * gauss();
			}
			double girth = sticks * length + rest + 0.125 * gauss() + joins;
			return girth * (1 + 0.002 * gauss());
		});
		StringGirth string = StringGirth.ofSticks(sticks, Length.of(length, IN, 0), Length.of(rest, IN, 0.125),
				GirthNotes.NONE);
		assertThat(string.estimate().standardUncertainty()).isCloseTo(simulated, within(0.02 * simulated));
	}

	/** Arm and stick equal to 2.04 %; where that is more than the method's least. */
	@Test
	void anArmAboutAsLongAsItsStick() {
		double simulated = scatter(() -> (80 + 6 * gauss()) * (1 + 0.0204 * gauss()) + 5 + 0.25 * gauss());
		EqualArmHeight arm = new EqualArmHeight(Length.of(80, FT, 6), Length.of(5, FT, 0.25), Notes.NONE);
		assertThat(arm.estimate().standardUncertainty()).isCloseTo(simulated, within(0.02 * simulated));
	}

	/** A scatter of 0.25 about a bias of 0.1 that all readings share. */
	@ParameterizedTest
	@CsvSource({ "2", "3", "5", "12" })
	void repeats(int n) {
		double claimed = 0;
		double squares = 0;
		int sets = 20_000;
		for (int i = 0; i < sets; i++) {
			double bias = 0.1 * gauss();
			Length[] readings = new Length[n];
			for (int k = 0; k < n; k++) {
				readings[k] = Length.of(150 + bias + 0.25 * gauss(), IN, 0.1);
			}
			Estimate mean = Length.repeats(readings).estimate(IN, (inches) -> 0);
			claimed += mean.standardUncertainty() * mean.standardUncertainty();
			squares += (mean.value() - 150) * (mean.value() - 150);
		}
		assertThat(Math.sqrt(claimed / sets)).isCloseTo(Math.sqrt(squares / sets), within(0.004));
	}

	/** One tape around the stem counts in the girth, the shadow and every spoke. */
	@Test
	void aGirthThatAllThreeFiguresShare() {
		Readings visit = visit(150, 6, 66, 6, 4.5, 24);
		double simulated = scatter(() -> visit(150 + 6 * gauss(), 6, 66 + 0.5 * gauss(), 6 + 0.02 * gauss(),
				4.5 + 0.02 * gauss(), 24 + 0.4 * gauss())
			.reduce()
			.score()
			.orElseThrow()
			.points()
			.hundredths() / 100.0);
		Reduced reduced = visit.reduce();
		double shared = reduced.score().orElseThrow().standardUncertainty();
		assertThat(shared).isCloseTo(simulated, within(0.02 * simulated));
		assertThat(shared).isGreaterThan(
				1.01 * new Reduced(1, reduced.girthInches(), reduced.heightFeet(), reduced.crownSpreadFeet()).score()
					.orElseThrow()
					.standardUncertainty());
		assertThat(visit.working().get(visit.working().size() - 1).formula()).contains("what they share");
	}

	/** Uncertainties as drawn above; the four spokes err as one, so one draw serves. */
	private static Readings visit(double girth, double u, double shadow, double pole, double poleShadow,
			double radius) {
		Length around = Length.of(girth, IN, u);
		Length spoke = Length.of(radius, FT, 0.8);
		return new Readings(new TapeGirth(around, GirthNotes.NONE),
				new ShadowHeight(Length.of(shadow, FT, 0.5), Length.of(pole, FT, 0.02), Length.of(poleShadow, FT, 0.02),
						null, around, null, Notes.NONE),
				new CrownSpokes(Collections.nCopies(4, spoke), List.of(), around, Notes.NONE));
	}

	/** Taped once from edge to edge, sighted from there: in the height and the crown. */
	@Test
	void aBaselineThatHeightAndCrownShare() {
		Readings visit = sighted(60, 3, 45, -5, 50);
		double simulated = scatter(
				() -> sighted(60 + 3 * gauss(), 3, 45 + 0.25 * gauss(), -5 + 0.25 * gauss(), 50 + 0.5 * gauss())
					.reduce()
					.score()
					.orElseThrow()
					.points()
					.hundredths() / 100.0);
		Reduced reduced = visit.reduce();
		double shared = reduced.score().orElseThrow().standardUncertainty();
		assertThat(shared).isCloseTo(simulated, within(0.02 * simulated));
		assertThat(shared).isGreaterThan(
				1.05 * new Reduced(1, reduced.girthInches(), reduced.heightFeet(), reduced.crownSpreadFeet()).score()
					.orElseThrow()
					.standardUncertainty());
		Readings apart = new Readings(visit.girth(), visit.height(),
				new CrownAxes(List.of(Length.of(60.5, FT, 3), Length.of(50, FT, 0.5)), Notes.NONE));
		assertThat(apart.reduce().correlations()).isEqualTo(Correlations.NONE);
	}

	/** The girth, exact, has no part in it. */
	private static Readings sighted(double baseline, double u, double top, double base, double across) {
		Length taped = Length.of(baseline, FT, u);
		return new Readings(
				new TapeGirth(Length.of(150, IN, 0), GirthNotes.NONE), new TangentHeight(taped, null, null, null,
						Angle.degrees(top, 0.25), Angle.degrees(base, 0.25), null, null, Notes.NONE),
				new CrownAxes(List.of(taped, Length.of(across, FT, 0.5)), Notes.NONE));
	}

	/**
	 * A tape that reads 3 % wrong does so in every segment: by simulation, the two crown
	 * axes each with an error of its own.
	 */
	@Test
	void segmentsOfOneTape() {
		double simulated = scatter(() -> ((80 + 45) * (1 + 0.03 * gauss()) + (70 + 40) * (1 + 0.03 * gauss())) / 2);
		CrownAxes axes = new CrownAxes(List.of(Length.segments(Length.of(80, FT), Length.of(45, FT)),
				Length.segments(Length.of(70, FT), Length.of(40, FT))), Notes.NONE);
		assertThat(axes.estimate().standardUncertainty()).isCloseTo(simulated, within(0.02 * simulated));
	}

	/**
	 * The angle to the base counts in the distance too: far from its partial derivative
	 * alone where the base lies steep below.
	 */
	@ParameterizedTest
	@CsvSource({ "102, 38, -8", "60, 45, -45", "90, 60, 15", "150, 20, -60" })
	void anAngleThatServesTwice(double line, double top, double base) {
		double simulated = scatter(
				() -> byLine(line + 0.5 * gauss(), top + 0.25 * gauss(), base + 0.25 * gauss()).estimate().value());
		assertThat(byLine(line, top, base).estimate().standardUncertainty()).isCloseTo(simulated,
				within(0.02 * simulated));
	}

	private static TangentHeight byLine(double line, double top, double base) {
		return new TangentHeight(null, null, null, Length.of(line, FT, 0.5), Angle.degrees(top, 0.25),
				Angle.degrees(base, 0.25), null, null, Notes.NONE);
	}

	private double gauss() {
		return this.random.nextGaussian();
	}

	private static double scatter(DoubleSupplier draw) {
		double first = draw.getAsDouble();
		double sum = 0;
		double squares = 0;
		for (int i = 0; i < DRAWS; i++) {
			double off = draw.getAsDouble() - first;
			sum += off;
			squares += off * off;
		}
		return Math.sqrt((squares - sum * sum / DRAWS) / (DRAWS - 1));
	}

}

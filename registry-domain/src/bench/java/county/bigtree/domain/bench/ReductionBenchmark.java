package county.bigtree.domain.bench;

import java.util.List;
import java.util.concurrent.TimeUnit;

import county.bigtree.domain.measuring.CrownAxes;
import county.bigtree.domain.measuring.CrownSpokes;
import county.bigtree.domain.measuring.GirthNotes;
import county.bigtree.domain.measuring.Notes;
import county.bigtree.domain.measuring.Readings;
import county.bigtree.domain.measuring.Reduced;
import county.bigtree.domain.measuring.StickHeight;
import county.bigtree.domain.measuring.StringGirth;
import county.bigtree.domain.measuring.TangentHeight;
import county.bigtree.domain.measuring.TapeGirth;
import county.bigtree.domain.measuring.WorkingLine;
import county.bigtree.domain.points.Score;
import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * One visit's three readings reduced to figures with uncertainty and to points, without
 * and with the working: of a simple visit (string, stick, two axes) and of one with
 * instruments (feet and inches, slope distance and clinometer, eight spokes).
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class ReductionBenchmark {

	private final Readings simple = new Readings(StringGirth.of(feet(8.35), GirthNotes.NONE),
			new StickHeight(inches(30), inches(2), inches(60), Notes.NONE),
			new CrownAxes(List.of(feet(40), Length.segments(feet(30), feet(8))), Notes.NONE));

	private final Readings instruments = new Readings(new TapeGirth(Length.feetAndInches(12, 3.5), GirthNotes.NONE),
			TangentHeight.alongSlope(feet(102), Angle.degrees(-8), Angle.degrees(38), Angle.degrees(-6), Notes.NONE),
			CrownSpokes.evenlySpaced(
					List.of(feet(28), feet(31.5), feet(26), feet(22.5), feet(30), feet(34), feet(29.5), feet(25)),
					Notes.NONE));

	@Benchmark
	public Score simpleReduced() {
		return score(this.simple.reduce());
	}

	@Benchmark
	public List<WorkingLine> simpleWithWorking() {
		return this.simple.working();
	}

	@Benchmark
	public Score instrumentsReduced() {
		return score(this.instruments.reduce());
	}

	@Benchmark
	public List<WorkingLine> instrumentsWithWorking() {
		return this.instruments.working();
	}

	private static Score score(Reduced reduced) {
		return reduced.score().orElseThrow();
	}

	private static Length feet(double value) {
		return Length.of(value, LengthUnit.FT);
	}

	private static Length inches(double value) {
		return Length.of(value, LengthUnit.IN);
	}

}

package county.bigtree.domain.measuring;

import java.util.List;

import county.bigtree.domain.points.Score;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.Length;
import org.junit.jupiter.api.Test;

import static county.bigtree.domain.quantity.LengthUnit.FT;
import static county.bigtree.domain.quantity.LengthUnit.IN;
import static county.bigtree.domain.quantity.LengthUnit.M;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

class ReadingsTest {

	private static final TapeGirth GIRTH = new TapeGirth(Length.of(187.5, IN, 0.5), GirthNotes.NONE);

	private static final PoleHeight HEIGHT = new PoleHeight(Length.of(91.4, FT, 2), Notes.NONE);

	private static final StatedSpread CROWN = new StatedSpread(Length.of(67.3, FT, 2.5), Notes.NONE);

	/** Common practice, no source; worked by hand. */
	@Test
	void comeToPointsWithWorking() {
		Readings readings = new Readings(GIRTH, HEIGHT, CROWN);
		Reduced reduced = readings.reduce();
		assertThat(reduced).isEqualTo(
				new Reduced(Reduced.VERSION, new Estimate(187.5, 0.5), new Estimate(91.4, 2), new Estimate(67.3, 2.5)));
		Score score = reduced.score().orElseThrow();
		assertThat(score.points()).hasToString("295.73");
		assertThat(score.standardUncertainty()).isCloseTo(2.1542, within(1e-4));
		List<WorkingLine> working = readings.working();
		WorkingLine points = working.get(working.size() - 2);
		assertThat(points.numbers()).isEqualTo("187.5 + 91.4 + 67.3 / 4");
		assertThat(points.result()).isEqualTo("295.725 points");
	}

	/** 100 + 75 + 39 / 4, by hand. */
	@Test
	void addStringStickAndAxes() {
		Readings readings = new Readings(StringGirth.of(Length.of(100, IN), GirthNotes.NONE),
				new StickHeight(Length.of(30, IN), Length.of(2, IN), Length.of(60, IN), Notes.NONE), new CrownAxes(
						List.of(Length.of(40, FT), Length.segments(Length.of(30, FT), Length.of(8, FT))), Notes.NONE));
		assertThat(readings.reduce().score().orElseThrow().points()).hasToString("184.75");
	}

	@Test
	void giveNoScoreWhileAFigureIsMissing() {
		Readings girthAlone = new Readings(GIRTH, null, null);
		assertThat(girthAlone.reduce().score()).isEmpty();
		assertThat(girthAlone.working()).hasSize(2);
		assertThatExceptionOfType(InvalidReadingException.class).isThrownBy(() -> new Readings(null, null, null));
	}

	@Test
	void nameTheReadingThatComesToNoTree() {
		StickHeight absurd = new StickHeight(Length.of(9000, M), Length.of(1e-9, M), Length.of(9000, M), Notes.NONE);
		assertThatExceptionOfType(InvalidReadingException.class)
			.isThrownBy(() -> new Readings(GIRTH, absurd, CROWN).reduce())
			.satisfies((ex) -> assertThat(ex.path()).isEqualTo("height"));
	}

	@Test
	void gatherTheCautionsOfAll() {
		assertThat(new Readings(GIRTH, HEIGHT, CROWN).cautions()).extracting(Caution::code)
			.containsExactly("method-unknown");
	}

}

package county.bigtree.registry.transfer;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Lists as people keep them, invented for this test: how columns are named is common
 * practice, no source.
 */
class MappingGuessTest {

	@Test
	void readsADiameterInCentimetresAndTheOtherLengthsAsMetric() {
		MappingBody guess = guess("Tree ID,Scientific name,Common name,DBH (cm),Height (m),Crown spread,Date,Lat,Lon",
				"1,Quercus alba,white oak,132,27.5,21,2011-05-03,40.4711,-87.7102");
		assertThat(column(columns(guess).species())).isEqualTo("Scientific name");
		MappingBody.Visit visit = visits(guess).get(0);
		assertThat(visit.girth()).isEqualTo(new MappingBody.Source("DBH (cm)", null, "diameter", "cm"));
		assertThat(visit.height()).isEqualTo(new MappingBody.Source("Height (m)", null, null, "m"));
		assertThat(visit.crown()).isEqualTo(new MappingBody.Source("Crown spread", null, null, "m"));
		assertThat(column(visit.measuredOn())).isEqualTo("Date");
		assertThat(column(columns(guess).latitude())).isEqualTo("Lat");
		assertThat(column(columns(guess).longitude())).isEqualTo("Lon");
		assertThat(guess.locationAccuracyMetres()).isEqualTo(20);
		assertThat(guess.rowKey()).isEqualTo("Tree ID");
	}

	@Test
	void readsAGirthInInchesAndFeetWhereNothingElseIsSaid() {
		MappingBody guess = guess("No,Tree,Circumference,Total height,Avg. spread,Year measured",
				"7,white oak,158,92,88,1998");
		MappingBody.Visit visit = visits(guess).get(0);
		assertThat(visit.girth()).isEqualTo(new MappingBody.Source("Circumference", null, "tape", "in"));
		assertThat(visit.height()).isEqualTo(new MappingBody.Source("Total height", null, null, "ft"));
		assertThat(visit.crown()).isEqualTo(new MappingBody.Source("Avg. spread", null, null, "ft"));
		assertThat(column(visit.measuredOn())).isEqualTo("Year measured");
		assertThat(column(columns(guess).species())).isEqualTo("Tree");
		assertThat(guess.locationAccuracyMetres()).isNull();
	}

	@Test
	void takesTheDiameterAtBreastHeightForNoHeight() {
		MappingBody guess = guess("Species,Diameter at breast height (in),Height ft", "white oak,50,92");
		MappingBody.Visit visit = visits(guess).get(0);
		assertThat(visit.girth())
			.isEqualTo(new MappingBody.Source("Diameter at breast height (in)", null, "diameter", "in"));
		assertThat(column(visit.height())).isEqualTo("Height ft");
	}

	@Test
	void findsSeveralVisitsInOneRow() {
		MappingBody guess = guess("Name,Seen,Girth in,Height ft,Spread ft,Girth 2015,Height 2015,Spread 2015",
				"white oak,June 1998,172,92,88,181,93,90");
		assertThat(visits(guess)).hasSize(2);
		assertThat(column(visits(guess).get(1).girth())).isEqualTo("Girth 2015");
		assertThat(column(visits(guess).get(1).crown())).isEqualTo("Spread 2015");
		assertThat(visits(guess).get(1).measuredOn()).isNull();
	}

	@Test
	void keepsPrivateColumnsApartFromNames() {
		MappingBody guess = guess("Common name,Owner,Owner phone,Nominated by,Notes,Known as,Points",
				"white oak,B. Landholder,555 0100,A. Finder,by the gate,The Long Oak,272");
		assertThat(column(columns(guess).owner())).isEqualTo("Owner");
		assertThat(column(columns(guess).contact())).isEqualTo("Owner phone");
		assertThat(column(columns(guess).finder())).isEqualTo("Nominated by");
		assertThat(column(columns(guess).visitNotes())).isEqualTo("Notes");
		assertThat(column(columns(guess).popularName())).isEqualTo("Known as");
		assertThat(column(columns(guess).statedPoints())).isEqualTo("Points");
		assertThat(column(columns(guess).species())).isEqualTo("Common name");
	}

	@Test
	void takesNoColumnForADayThatHoldsNone() {
		MappingBody guess = guess("Species,Measured", "white oak,by tape", "red oak,by pole");
		assertThat(visits(guess).get(0).measuredOn()).isNull();
	}

	@Test
	void takesNoTagForAKeyThatComesTwice() {
		MappingBody guess = guess("No,Species", "1,white oak", "1,red oak");
		assertThat(column(columns(guess).tag())).isEqualTo("No");
		assertThat(guess.rowKey()).isNull();
	}

	@Test
	void guessesNothingWhereNothingIsKnown() {
		MappingBody guess = guess("a,b", "1,2");
		assertThat(columns(guess)).isEqualTo(MappingBody.Columns.NONE);
		assertThat(visits(guess)).containsExactly(new MappingBody.Visit(null, null, null, null));
	}

	private static MappingBody guess(String header, String... rows) {
		return MappingGuess.of(List.of(header.split(",")),
				Arrays.stream(rows).map((row) -> List.of(row.split(","))).toList());
	}

	private static MappingBody.Columns columns(MappingBody guess) {
		return Objects.requireNonNull(guess.columns());
	}

	private static List<MappingBody.Visit> visits(MappingBody guess) {
		return Objects.requireNonNull(guess.visits());
	}

	private static @Nullable String column(MappingBody.@Nullable Source source) {
		return (source != null) ? source.column() : null;
	}

}

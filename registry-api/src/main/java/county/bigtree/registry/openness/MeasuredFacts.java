package county.bigtree.registry.openness;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Stream;

import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.registry.lookup.ReadScores.ScoreOfDay;
import county.bigtree.registry.openness.DarwinTable.Column;
import org.jspecify.annotations.Nullable;

/**
 * The figures of trees as Darwin Core measurements or facts: girth, height, crown spread
 * and points of every score that was not withdrawn. Accuracy is one standard uncertainty
 * in the unit of the value.
 */
final class MeasuredFacts {

	private MeasuredFacts() {
	}

	static DarwinTable<Fact> table() {
		return new DarwinTable<>("measurementorfact.txt", DarwinTable.DARWIN_CORE + "MeasurementOrFact", List.of(
				Column.darwin("occurrenceID", Fact::occurrence), Column.darwin("measurementID", Fact::id),
				Column.darwin("measurementType", Fact::type), Column.darwin("measurementValue", Fact::value),
				Column.darwin("measurementAccuracy", Fact::accuracy), Column.darwin("measurementUnit", Fact::unit),
				Column.darwin("measurementDeterminedDate", Fact::day), Column.darwin("measurementMethod", Fact::method),
				Column.darwin("measurementRemarks", Fact::remarks)));
	}

	static Stream<Fact> of(OpenTree tree) {
		return tree.scores()
			.stream()
			.filter((score) -> score.withdrawnAt() == null)
			.flatMap((score) -> of(tree, score));
	}

	private static Stream<Fact> of(OpenTree tree, ScoreOfDay score) {
		String remarks = score.carriedOver() ? "Carried over from an older record" : null;
		Part part = new Part(Occurrences.id(tree), score, remarks);
		return Stream.of(part.fact("girth", score.girthInches(), score.girthU(), "in", null, method(score.girthBy())),
				part.fact("height", score.heightFeet(), score.heightU(), "ft",
						(score.heightOn() != null) ? KnownDay.of(score.heightOn()) : null, method(score.heightBy())),
				part.fact("crown spread", score.crownFeet(), score.crownU(), "ft",
						(score.crownOn() != null) ? KnownDay.of(score.crownOn()) : null, method(score.crownBy())),
				part.fact("points", score.points(), score.pointsU(), "points", null,
						"girth in inches + height in feet + a quarter of the mean crown spread in feet"));
	}

	private static @Nullable String method(@Nullable String code) {
		return (code != null) ? code.replace('-', ' ') : null;
	}

	/**
	 * A figure.
	 *
	 * @param day the measuring day as exactly as it is known
	 */
	record Fact(String occurrence, String id, String type, BigDecimal value, BigDecimal accuracy, String unit,
			KnownDay day, @Nullable String method, @Nullable String remarks) {
	}

	private record Part(String occurrence, ScoreOfDay score, @Nullable String remarks) {

		/** Where an earlier visit's figure stands in, its day does too. */
		Fact fact(String type, BigDecimal value, BigDecimal accuracy, String unit, @Nullable KnownDay earlier,
				@Nullable String method) {
			String id = "urn:uuid:" + this.score.measurement() + "#" + type.replace(' ', '-');
			return new Fact(this.occurrence, id, type, CountyInCsv.rounded(value), CountyInCsv.rounded(accuracy), unit,
					(earlier != null) ? earlier : this.score.measured(), method, this.remarks);
		}

	}

}

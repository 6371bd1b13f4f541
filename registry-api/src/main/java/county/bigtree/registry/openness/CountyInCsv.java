package county.bigtree.registry.openness;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;

import county.bigtree.domain.place.Position;
import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.registry.csv.SafeCsv;
import county.bigtree.registry.lookup.ReadScores.ScoreOfDay;
import county.bigtree.registry.lookup.TreeSummary;
import county.bigtree.registry.species.Species;
import county.bigtree.registry.standing.BookKey;
import county.bigtree.registry.standing.StandingPage;
import org.jspecify.annotations.Nullable;

/**
 * Lines of the county's files in CSV. Girth in inches, height and crown spread in feet,
 * degrees of WGS 84; what stands beside a figure as {@code …StandardUncertainty} is one
 * standard uncertainty in its unit.
 */
final class CountyInCsv {

	private static final int DEGREES = 6;

	private CountyInCsv() {
	}

	static SafeCsv standingsHead() {
		return new SafeCsv().line("county", "species", "scientificName", "commonName", "rank", "tree", "tag", "listed",
				"title", "points", "pointsStandardUncertainty", "girthInches", "heightFeet", "crownSpreadFeet",
				"measuredOn", "effectiveOn", "heightMeasuredOn", "crownMeasuredOn", "stale", "damaged", "carriedOver",
				"behindLeader", "asOf", "knownAt");
	}

	static void standing(SafeCsv csv, BookKey book, @Nullable Species species, StandingPage page,
			StandingPage.Item item) {
		ScoredTree scored = item.scored();
		StandingPage.Figures figures = item.figures();
		csv.line(book.county(), book.species(), (species != null) ? species.scientificName() : null,
				(species != null) ? species.commonName() : null, item.rank(), figures.listed() ? scored.tree() : null,
				figures.tag(), figures.listed(), (item.title() != null) ? item.title().word() : null,
				scored.score().points().toBigDecimal(),
				rounded(BigDecimal.valueOf(scored.score().standardUncertainty())), rounded(figures.girthInches()),
				rounded(figures.heightFeet()), rounded(figures.crownSpreadFeet()), figures.measured(),
				scored.measuredOn(), figures.heightMeasuredOn(), figures.crownMeasuredOn(), item.stale(),
				scored.lostOn() != null, scored.carriedOver(), item.behindLeader(), page.asOf().day(),
				page.asOf().present() ? page.recordedThrough() : page.asOf().knownAt());
	}

	static SafeCsv treesHead() {
		return new SafeCsv().line("tree", "tag", "popularName", "county", "species", "scientificName", "commonName",
				"latitude", "longitude", "accuracyMetres", "place", "condition", "lastSeenOn", "eligible", "rank",
				"points", "pointsStandardUncertainty", "girthInches", "heightFeet", "crownSpreadFeet", "measuredOn",
				"effectiveOn", "damaged", "carriedOver", "title", "titleSince");
	}

	static void tree(SafeCsv csv, OpenTree open) {
		TreeSummary tree = open.tree();
		TreeSummary.Standing standing = tree.score();
		ScoreOfDay score = open.present();
		Optional<Position> shown = tree.shown();
		csv.line(tree.id(), tree.tag(), tree.popularName(), tree.county(), tree.species(),
				open.species().scientificName(), open.species().commonName(),
				shown.map((place) -> degrees(place.latitude())).orElse(null),
				shown.map((place) -> degrees(place.longitude())).orElse(null),
				shown.map((place) -> BigDecimal.valueOf(place.accuracyMetres())).orElse(null), open.shown().code(),
				tree.condition(), tree.lastSeenOn(), tree.eligible(), (standing != null) ? standing.rank() : null,
				(standing != null) ? standing.points() : null,
				(standing != null) ? rounded(standing.pointsStandardUncertainty()) : null,
				(score != null) ? rounded(score.girthInches()) : null,
				(score != null) ? rounded(score.heightFeet()) : null,
				(score != null) ? rounded(score.crownFeet()) : null, (standing != null) ? standing.measured() : null,
				(standing != null) ? standing.measuredOn() : null, (standing != null) ? standing.damaged() : null,
				(standing != null) ? standing.carriedOver() : null, tree.title(), tree.titleSince());
	}

	static SafeCsv scoresHead() {
		return new SafeCsv().line("tree", "tag", "county", "species", "points", "pointsStandardUncertainty",
				"girthInches", "girthInchesStandardUncertainty", "girthMethod", "heightFeet",
				"heightFeetStandardUncertainty", "heightMethod", "heightMeasuredOn", "crownSpreadFeet",
				"crownSpreadFeetStandardUncertainty", "crownMethod", "crownMeasuredOn", "measuredOn", "effectiveOn",
				"recordedAt", "withdrawnAt", "withdrawn", "carriedOver", "measurement");
	}

	static void score(SafeCsv csv, OpenTree open, ScoreOfDay score) {
		csv.line(open.tree().id(), open.tree().tag(), open.tree().county(), score.species(), score.points(),
				rounded(score.pointsU()), rounded(score.girthInches()), rounded(score.girthU()), score.girthBy(),
				rounded(score.heightFeet()), rounded(score.heightU()), score.heightBy(), score.heightOn(),
				rounded(score.crownFeet()), rounded(score.crownU()), score.crownBy(), score.crownOn(), score.measured(),
				score.measuredOn(), score.recordedAt(), score.withdrawnAt(), score.withdrawn(), score.carriedOver(),
				score.measurement());
	}

	static BigDecimal rounded(BigDecimal figure) {
		return figure.setScale(2, RoundingMode.HALF_UP);
	}

	/** A tenth of a metre, which is finer than any place is known. */
	static BigDecimal degrees(double degrees) {
		return BigDecimal.valueOf(degrees).setScale(DEGREES, RoundingMode.HALF_UP);
	}

}

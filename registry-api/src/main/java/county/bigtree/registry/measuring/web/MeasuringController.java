package county.bigtree.registry.measuring.web;

import county.bigtree.registry.http.quantity.WorkingJson;
import county.bigtree.registry.http.quantity.CautionJson;
import county.bigtree.registry.standing.CatchUp;
import county.bigtree.registry.species.SpeciesCatalogue;
import java.math.BigDecimal;
import java.util.List;

import county.bigtree.domain.measuring.CrownReading;
import county.bigtree.domain.measuring.FigureMethods;
import county.bigtree.domain.measuring.GirthReading;
import county.bigtree.domain.measuring.HeightReading;
import county.bigtree.domain.measuring.Reduced;
import county.bigtree.domain.measuring.Readings;
import county.bigtree.domain.points.Comparison;
import county.bigtree.domain.points.Score;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.standing.Title;
import county.bigtree.domain.standing.WhatItTakes;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Unkeyed;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.standing.ComparePoints;
import county.bigtree.registry.standing.ReadStandings;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.Valid;
import org.jspecify.annotations.Nullable;

import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/**
 * Tries readings out: shows what they come to and how, and records nothing.
 */
@RestController
@RequestMapping("/api/v1/measuring")
@Tag(name = "Measuring", description = "Readings tried out: what they come to, and how. Nothing is recorded.")
class MeasuringController {

	private final ComparePoints comparePoints;

	private final ReadStandings counties;

	private final SpeciesCatalogue species;

	private final CatchUp catchUp;

	MeasuringController(ComparePoints comparePoints, ReadStandings counties, SpeciesCatalogue species,
			CatchUp catchUp) {
		this.comparePoints = comparePoints;
		this.counties = counties;
		this.species = species;
		this.catchUp = catchUp;
	}

	@PostMapping("/girth")
	@Access(Who.ANYONE)
	@Unkeyed
	@Operation(operationId = "reduceGirth", summary = "What a girth reading comes to, in inches")
	ReadingAnswer girth(@RequestBody GirthReading reading) {
		return ReadingAnswer.of(reading, "in");
	}

	@PostMapping("/height")
	@Access(Who.ANYONE)
	@Unkeyed
	@Operation(operationId = "reduceHeight", summary = "What a height reading comes to, in feet")
	ReadingAnswer height(@RequestBody HeightReading reading) {
		return ReadingAnswer.of(reading, "ft");
	}

	@PostMapping("/crown")
	@Access(Who.ANYONE)
	@Unkeyed
	@Operation(operationId = "reduceCrown",
			summary = "What a crown reading comes to as mean spread, in feet, and the ground it covers")
	CrownAnswer crown(@RequestBody CrownReading reading) {
		return CrownAnswer.of(reading);
	}

	@PostMapping("/points")
	@Access(Who.ANYONE)
	@Unkeyed
	@Operation(operationId = "reducePoints",
			summary = "What three readings come to in points, and how that compares in a county")
	PointsAnswer points(@Valid @RequestBody PointsBody body) {
		Readings readings = new Readings(body.girth(), body.height(), body.crown());
		Reduced reduced = readings.reduce();
		Score score = reduced.score().orElseThrow();
		return new PointsAnswer(ReducedJson.of(body, score, reduced.pointsDegreesOfFreedom()),
				WorkingJson.of(readings.working()), CautionJson.of(readings.cautions()), comparison(body, score));
	}

	private @Nullable ComparisonJson comparison(PointsBody body, Score score) {
		String county = body.county();
		String species = body.species();
		if (county == null || species == null) {
			return null;
		}
		if (!this.counties.knows(county)) {
			throw Problem.invalid("#/county", "unknown", "no county has this key");
		}
		if (this.species.find(species).isEmpty()) {
			throw Problem.invalid("#/species", "unknown", "no species has this key: search for it by name");
		}
		this.catchUp.county(county);
		return ComparisonJson.from(this.comparePoints.compare(county, species, score,
				new FigureMethods(body.girth().method(), body.height().method(), body.crown().method())));
	}

	/** Three readings, and where to compare them. */
	record PointsBody(@NotNull GirthReading girth, @NotNull HeightReading height, @NotNull CrownReading crown,
			@Nullable String species, @Nullable String county) {
	}

	/** What three readings come to. */
	record PointsAnswer(ReducedJson reduced, List<WorkingJson> working, List<CautionJson> cautions,
			@Nullable ComparisonJson comparison) {
	}

	/**
	 * Figures with their standard uncertainties.
	 *
	 * @param pointsDegreesOfFreedom of the uncertainty of the points, where it rests on a
	 * few repeats; else null
	 * @param pointsStudentFactor by which Student's t would have it multiplied for 95 %
	 */
	record ReducedJson(BigDecimal girthInches, BigDecimal girthInchesStandardUncertainty, BigDecimal heightFeet,
			BigDecimal heightFeetStandardUncertainty, BigDecimal crownSpreadFeet,
			BigDecimal crownSpreadFeetStandardUncertainty, BigDecimal points, BigDecimal pointsStandardUncertainty,
			int pointsRounded, @Nullable BigDecimal pointsDegreesOfFreedom, @Nullable BigDecimal pointsStudentFactor) {

		static ReducedJson of(PointsBody body, Score score, double degreesOfFreedom) {
			FewRepeats repeats = FewRepeats.of(degreesOfFreedom);
			Estimate girth = body.girth().estimate();
			Estimate height = body.height().estimate();
			Estimate crown = body.crown().estimate();
			return new ReducedJson(Rounded.hundredths(girth.value()), Rounded.hundredths(girth.standardUncertainty()),
					Rounded.hundredths(height.value()), Rounded.hundredths(height.standardUncertainty()),
					Rounded.hundredths(crown.value()), Rounded.hundredths(crown.standardUncertainty()),
					score.points().toBigDecimal(), Rounded.hundredths(score.standardUncertainty()),
					score.points().rounded(), repeats.degreesOfFreedom(), repeats.studentFactor());
		}

	}

	/**
	 * How the points stand among those on the books.
	 *
	 * @param toLead how many points more would make it champion; equal points share; null
	 * where its figures were taken by a method that takes no title, or the species holds
	 * none there
	 * @param toShare how many would give it a share of the title, by the county's tie
	 * rule; null as before
	 * @param aheadOfLeaderProbability that it is truly larger than the leader
	 * @param clarity how clear the order of the two is, whichever is ahead: clear, likely
	 * or too-close
	 * @param leadsAllProbability that it is truly larger than every current tree
	 */
	record ComparisonJson(@Nullable BigDecimal leaderPoints, BigDecimal behind, long wouldRank,
			@Nullable String wouldHold, @Nullable BigDecimal toLead, @Nullable BigDecimal toShare,
			@Nullable BigDecimal aheadOfLeaderProbability, @Nullable String clarity,
			@Nullable BigDecimal leadsAllProbability) {

		static ComparisonJson from(ComparePoints.Compared compared) {
			Title title = compared.wouldHold();
			Comparison leader = compared.toLeader();
			Double leadsAll = compared.leadsAll();
			Score most = compared.leader();
			WhatItTakes takes = compared.takes();
			return new ComparisonJson((most != null) ? most.points().toBigDecimal() : null, compared.behind(),
					compared.wouldRank(), (title != null) ? title.word() : null,
					(takes != null) ? takes.toLead() : null, (takes != null) ? takes.toShare() : null,
					(leader != null) ? Rounded.fourPlaces(leader.probability()) : null,
					(leader != null) ? leader.clarity().code() : null,
					(leadsAll != null) ? Rounded.fourPlaces(leadsAll) : null);
		}

	}

}

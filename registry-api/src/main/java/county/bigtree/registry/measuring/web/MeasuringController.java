package county.bigtree.registry.measuring.web;

import county.bigtree.registry.http.quantity.WorkingJson;
import county.bigtree.registry.http.quantity.CautionJson;
import county.bigtree.registry.standing.CatchUp;
import county.bigtree.registry.species.SpeciesCatalogue;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;

import county.bigtree.domain.measuring.CrownReading;
import county.bigtree.domain.measuring.GirthReading;
import county.bigtree.domain.measuring.HeightReading;
import county.bigtree.domain.measuring.Reading;
import county.bigtree.domain.measuring.Reduced;
import county.bigtree.domain.measuring.Readings;
import county.bigtree.domain.points.Score;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.standing.Title;
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
	@Operation(operationId = "reduceCrown", summary = "What a crown reading comes to as mean spread, in feet")
	ReadingAnswer crown(@RequestBody CrownReading reading) {
		return ReadingAnswer.of(reading, "ft");
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
		return new PointsAnswer(ReducedJson.of(body, score), WorkingJson.of(readings.working()),
				CautionJson.of(readings.cautions()), comparison(body, score));
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
		return ComparisonJson.from(this.comparePoints.compare(county, species, score));
	}

	private static BigDecimal hundredths(double value) {
		return BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP);
	}

	/** Three readings, and where to compare them. */
	record PointsBody(@NotNull GirthReading girth, @NotNull HeightReading height, @NotNull CrownReading crown,
			@Nullable String species, @Nullable String county) {
	}

	/**
	 * What one reading comes to.
	 *
	 * @param shown the value and twice its standard uncertainty, in the digits that they
	 * deserve
	 */
	record ReadingAnswer(BigDecimal value, BigDecimal standardUncertainty, String unit, String shown,
			List<WorkingJson> working, List<CautionJson> cautions) {

		static ReadingAnswer of(Reading reading, String unit) {
			Estimate estimate = reading.estimate();
			return new ReadingAnswer(hundredths(estimate.value()), hundredths(estimate.standardUncertainty()), unit,
					estimate.shown(unit), WorkingJson.of(reading.working()), CautionJson.of(reading.cautions()));
		}

	}

	/** What three readings come to. */
	record PointsAnswer(ReducedJson reduced, List<WorkingJson> working, List<CautionJson> cautions,
			@Nullable ComparisonJson comparison) {
	}

	/** Figures with their standard uncertainties. */
	record ReducedJson(BigDecimal girthInches, BigDecimal girthInchesStandardUncertainty, BigDecimal heightFeet,
			BigDecimal heightFeetStandardUncertainty, BigDecimal crownSpreadFeet,
			BigDecimal crownSpreadFeetStandardUncertainty, BigDecimal points, BigDecimal pointsStandardUncertainty,
			int pointsRounded) {

		static ReducedJson of(PointsBody body, Score score) {
			Estimate girth = body.girth().estimate();
			Estimate height = body.height().estimate();
			Estimate crown = body.crown().estimate();
			return new ReducedJson(hundredths(girth.value()), hundredths(girth.standardUncertainty()),
					hundredths(height.value()), hundredths(height.standardUncertainty()), hundredths(crown.value()),
					hundredths(crown.standardUncertainty()), score.points().toBigDecimal(),
					hundredths(score.standardUncertainty()), score.points().rounded());
		}

	}

	/** How the points stand among those on the books. */
	record ComparisonJson(@Nullable BigDecimal leaderPoints, BigDecimal behind, long wouldRank,
			@Nullable String wouldHold) {

		static ComparisonJson from(ComparePoints.Compared compared) {
			Title title = compared.wouldHold();
			return new ComparisonJson(compared.leaderPoints(), compared.behind(), compared.wouldRank(),
					(title != null) ? title.word() : null);
		}

	}

}

package county.bigtree.registry.measuring.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;

import county.bigtree.domain.measuring.SlopeRule;
import county.bigtree.domain.measuring.WhereToMeasure;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.rules.RulesReader;
import county.bigtree.registry.standing.ReadStandings;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/**
 * Says where on a stem the girth is taken, by the rules of the county today.
 */
@RestController
@Tag(name = "Measuring", description = "Readings tried out: what they come to, and how. Nothing is recorded.")
class MeasuringPointController {

	/** On level ground the point is the same on every stem. */
	private static final double ANY = 1;

	private final ReadStandings counties;

	private final RulesReader rules;

	private final RegisterClock clock;

	MeasuringPointController(ReadStandings counties, RulesReader rules, RegisterClock clock) {
		this.counties = counties;
		this.rules = rules;
		this.clock = clock;
	}

	@GetMapping("/api/v1/measuring/point")
	@Access(Who.ANYONE)
	@Operation(operationId = "findMeasuringPoint",
			summary = "Where on a stem the girth is taken, by the county's rules, and why")
	PointAnswer point(@RequestParam String county, @RequestParam(required = false) @Nullable Double girthInches,
			@RequestParam(defaultValue = "0") double slopePercent,
			@RequestParam(required = false) @Nullable Double unionHeightFeet,
			@RequestParam(required = false) @Nullable Double swellEndFeet) {
		if (!this.counties.knows(county)) {
			throw Problem.invalid("#/county", "unknown", "no county has this key");
		}
		if (girthInches == null && slopePercent > 0) {
			throw Problem.invalid("#/girthInches", "missing", "is needed on a slope");
		}
		SlopeRule rule = this.rules.get(county).at(this.clock.now()).slopeRule();
		WhereToMeasure where = WhereToMeasure.of(rule, (girthInches != null) ? girthInches : ANY, slopePercent,
				unionHeightFeet, swellEndFeet);
		return new PointAnswer(rule.word(),
				BigDecimal.valueOf(where.feetAboveUphillGround()).setScale(2, RoundingMode.HALF_UP), where.reasons());
	}

	/**
	 * Where the girth is taken.
	 *
	 * @param slopeRule the county's: uphill or midslope
	 */
	record PointAnswer(String slopeRule, BigDecimal feetAboveUphillGround, List<String> reasons) {
	}

}

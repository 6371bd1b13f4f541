package county.bigtree.registry.rules;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

import county.bigtree.domain.measuring.Method;
import county.bigtree.domain.rulebook.CarryForward;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.measuring.SlopeRule;
import county.bigtree.domain.rulebook.TieRule;
import county.bigtree.domain.rulebook.TitleRules;
import county.bigtree.domain.review.Tolerances;
import county.bigtree.domain.rulebook.WhenStale;
import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import io.swagger.v3.oas.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * A rulebook as it stands in requests, answers and in the record. What is left out keeps
 * its default.
 */
public record RulebookJson(@NotNull LocalDate effectiveOn, @Nullable @Valid Tie tieRule,
		@Nullable Integer currencyYears, @Nullable String whenStale, @Nullable Integer sightingYears,
		@Nullable Integer remeasureWithin, @Nullable Integer requiredSignOffs, @Nullable Boolean checkReadingsRequired,
		@Nullable String slopeRule, @Nullable Tolerances tolerances, @Nullable LocalDate carriedOverUntil,
		@Nullable @Valid Carry carryForward, @Nullable Integer oldestFilingMonths, @Nullable Integer answerDays,
		@Nullable Integer requiredSignOffsForTitle, @Nullable Boolean titleNeedsCoordinator,
		@Nullable List<String> titleMethods,
		@Nullable @Schema(
				description = "passed photos of its tree, 0 to 10, that a measurement needs on which a title would rest") Integer photosRequired,
		@Nullable @Schema(
				description = "keys of the species of which trees may hold titles; null for all") List<@NotNull String> eligibleSpecies,
		@Nullable String reason) {

	private static final Map<String, WhenStale> WHEN_STALE = Map.of("keeps", WhenStale.KEEPS, "vacant",
			WhenStale.VACANT, "passes", WhenStale.PASSES);

	private static final Map<String, SlopeRule> SLOPE_RULES = Map.of("uphill", SlopeRule.UPHILL, "midslope",
			SlopeRule.MIDSLOPE);

	public static RulebookJson from(Rulebook rulebook) {
		return new RulebookJson(rulebook.effectiveOn(), Tie.from(rulebook.tieRule()), rulebook.currencyYears(),
				rulebook.whenStale().name().toLowerCase(Locale.ROOT), rulebook.sightingYears(),
				rulebook.remeasureWithinDays(), rulebook.requiredSignOffs(), rulebook.checkReadingsRequired(),
				rulebook.slopeRule().name().toLowerCase(Locale.ROOT), rulebook.tolerances(),
				rulebook.carriedOverUntil(), Carry.from(rulebook.carryForward()), rulebook.oldestFilingMonths(),
				rulebook.answerDays(), rulebook.title().requiredSignOffs(), rulebook.title().needsCoordinator(),
				rulebook.title().methods().stream().sorted().map(Method::code).toList(), rulebook.title().photos(),
				list(rulebook.eligibleSpecies()), null);
	}

	/**
	 * The same rules from another day.
	 */
	public RulebookJson from(LocalDate day) {
		return new RulebookJson(day, this.tieRule, this.currencyYears, this.whenStale, this.sightingYears,
				this.remeasureWithin, this.requiredSignOffs, this.checkReadingsRequired, this.slopeRule,
				this.tolerances, this.carriedOverUntil, this.carryForward, this.oldestFilingMonths, this.answerDays,
				this.requiredSignOffsForTitle, this.titleNeedsCoordinator, this.titleMethods, this.photosRequired,
				this.eligibleSpecies, this.reason);
	}

	/**
	 * The same rules with why they were added.
	 */
	public RulebookJson because(@Nullable String why) {
		return new RulebookJson(this.effectiveOn, this.tieRule, this.currencyYears, this.whenStale, this.sightingYears,
				this.remeasureWithin, this.requiredSignOffs, this.checkReadingsRequired, this.slopeRule,
				this.tolerances, this.carriedOverUntil, this.carryForward, this.oldestFilingMonths, this.answerDays,
				this.requiredSignOffsForTitle, this.titleNeedsCoordinator, this.titleMethods, this.photosRequired,
				this.eligibleSpecies, why);
	}

	/**
	 * The rulebook that this says.
	 * @throws IllegalArgumentException naming the field, its range and what was given
	 */
	public Rulebook toRulebook() {
		Rulebook defaults = Rulebook.defaults(this.effectiveOn);
		return new Rulebook(this.effectiveOn, (this.tieRule != null) ? this.tieRule.toTieRule() : defaults.tieRule(),
				orElse(this.currencyYears, defaults.currencyYears()),
				known("whenStale", WHEN_STALE, this.whenStale, defaults.whenStale()),
				orElse(this.sightingYears, defaults.sightingYears()),
				orElse(this.remeasureWithin, defaults.remeasureWithinDays()),
				orElse(this.requiredSignOffs, defaults.requiredSignOffs()),
				orElse(this.checkReadingsRequired, defaults.checkReadingsRequired()),
				known("slopeRule", SLOPE_RULES, this.slopeRule, defaults.slopeRule()),
				orElse(this.tolerances, defaults.tolerances()), this.carriedOverUntil,
				(this.carryForward != null) ? this.carryForward.toCarryForward() : defaults.carryForward(),
				orElse(this.oldestFilingMonths, defaults.oldestFilingMonths()),
				orElse(this.answerDays, defaults.answerDays()), titleRules(defaults),
				(this.eligibleSpecies != null) ? new HashSet<>(this.eligibleSpecies) : null);
	}

	private TitleRules titleRules(Rulebook defaults) {
		int forRank = orElse(this.requiredSignOffs, defaults.requiredSignOffs());
		int known = Math.max(1, Math.min(5, forRank));
		return new TitleRules(orElse(this.requiredSignOffsForTitle, known),
				orElse(this.titleNeedsCoordinator, defaults.title().needsCoordinator()),
				(this.titleMethods != null)
						? this.titleMethods.stream().map(RulebookJson::method).collect(Collectors.toSet())
						: defaults.title().methods(),
				orElse(this.photosRequired, defaults.title().photos()));
	}

	private static Method method(String code) {
		return Method.find(code)
			.orElseThrow(() -> new IllegalArgumentException("titleMethods must name methods of readings, was " + code));
	}

	private static @Nullable List<String> list(@Nullable Set<String> keys) {
		return (keys != null) ? keys.stream().sorted().toList() : null;
	}

	private static <T> T orElse(@Nullable T given, T otherwise) {
		return (given != null) ? given : otherwise;
	}

	private static <T> T known(String field, Map<String, T> words, @Nullable String word, T otherwise) {
		if (word == null) {
			return otherwise;
		}
		T value = words.get(word);
		if (value == null) {
			throw new IllegalArgumentException(field + " must be one of " + words.keySet() + ", was " + word);
		}
		return value;
	}

	/**
	 * For how many years an earlier height or crown spread may stand in for one that a
	 * visit lacks: 0 to 20, none where left out.
	 */
	public record Carry(@Nullable @Min(0) @Max(20) Integer heightYears, @Nullable @Min(0) @Max(20) Integer crownYears) {

		static Carry from(CarryForward carry) {
			return new Carry(carry.heightYears(), carry.crownYears());
		}

		CarryForward toCarryForward() {
			return new CarryForward(orElse(this.heightYears, 0), orElse(this.crownYears, 0));
		}

	}

	/**
	 * A tie rule: `points` and `percent` take `n`; `uncertainty` takes `k` and `atMost`.
	 */
	public record Tie(@NotNull String kind, @Nullable BigDecimal n, @Nullable BigDecimal k,
			@Nullable BigDecimal atMost) {

		static Tie from(TieRule rule) {
			if (rule instanceof TieRule.WithinPoints points) {
				return new Tie("points", points.n(), null, null);
			}
			if (rule instanceof TieRule.WithinPercent percent) {
				return new Tie("percent", percent.n(), null, null);
			}
			TieRule.WithinUncertainty uncertainty = (TieRule.WithinUncertainty) rule;
			return new Tie("uncertainty", null, uncertainty.k(), uncertainty.atMost());
		}

		TieRule toTieRule() {
			return switch (this.kind) {
				case "points" -> new TieRule.WithinPoints(required("n", this.n));
				case "percent" -> new TieRule.WithinPercent(required("n", this.n));
				case "uncertainty" ->
					new TieRule.WithinUncertainty(required("k", this.k), required("atMost", this.atMost));
				default ->
					throw new IllegalArgumentException("kind must be points, percent or uncertainty, was " + this.kind);
			};
		}

		private static BigDecimal required(String field, @Nullable BigDecimal value) {
			if (value == null) {
				throw new IllegalArgumentException(field + " is missing from the tie rule");
			}
			return value;
		}

	}

}

package county.bigtree.domain.standing;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.UUID;

import county.bigtree.domain.measuring.FigureMethods;
import county.bigtree.domain.measuring.Method;
import county.bigtree.domain.points.Points;
import county.bigtree.domain.points.Score;
import county.bigtree.domain.review.Tolerances;
import county.bigtree.domain.rulebook.CarryForward;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.measuring.SlopeRule;
import county.bigtree.domain.rulebook.TieRule;
import county.bigtree.domain.rulebook.TitleRules;
import county.bigtree.domain.rulebook.WhenStale;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Who holds a title: common practice of county registers, no source; each case worked by
 * hand.
 */
class HoldersTest {

	private static final String OAK = "quercus-alba";

	private static final LocalDate TODAY = LocalDate.of(2026, 6, 1);

	private static final LocalDate RECENT = LocalDate.of(2024, 6, 1);

	private static final LocalDate STALE = LocalDate.of(2010, 6, 1);

	@Test
	void nobodyHoldsTheTitleOfASpeciesWithoutTrees() {
		assertThat(Holders.of(OAK, List.of(), Rulebook.defaults(Rulebook.BEGINNING), TODAY)).isEmpty();
	}

	@Test
	void nobodyHoldsTheTitleOfASpeciesThatTheRulesDoNotList() {
		ScoredTree only = tree(30_000, RECENT);
		assertThat(Holders.of(OAK, List.of(only), listing("acer-rubrum"), TODAY)).isEmpty();
		assertThat(Holders.of(OAK, List.of(only), listing("acer-rubrum", OAK), TODAY))
			.containsExactly(Map.entry(only.tree(), Title.CHAMPION));
	}

	@Test
	void treesWithTheMostPointsAreChampionsAndThoseWithinTheTieRuleCoChampions() {
		ScoredTree first = tree(30_000, RECENT);
		ScoredTree equal = tree(30_000, RECENT);
		ScoredTree within = tree(29_500, RECENT);
		ScoredTree beyond = tree(29_499, RECENT);
		assertThat(holders(points(5), WhenStale.KEEPS, first, equal, within, beyond)).containsOnly(
				Map.entry(first.tree(), Title.CHAMPION), Map.entry(equal.tree(), Title.CHAMPION),
				Map.entry(within.tree(), Title.CO_CHAMPION));
	}

	/** 295 is within 5 of 300; 291 is within 5 of 295 only. */
	@Test
	void tiesAreJudgedAgainstTheLeaderAndNeverChained() {
		ScoredTree leader = tree(30_000, RECENT);
		ScoredTree second = tree(29_500, RECENT);
		ScoredTree third = tree(29_100, RECENT);
		assertThat(holders(points(5), WhenStale.KEEPS, leader, second, third)).containsOnlyKeys(leader.tree(),
				second.tree());
	}

	/** 2 percent of 300 points are 6. */
	@Test
	void aPercentageIsOfTheLeadersPoints() {
		ScoredTree leader = tree(30_000, RECENT);
		ScoredTree within = tree(29_400, RECENT);
		ScoredTree beyond = tree(29_399, RECENT);
		assertThat(holders(new TieRule.WithinPercent(new BigDecimal(2)), WhenStale.KEEPS, leader, within, beyond))
			.containsOnlyKeys(leader.tree(), within.tree());
	}

	/** 2 x sqrt(1.5² + 2²) = 5 points; a sloppier reading is held at 6. */
	@Test
	void uncertaintySharesATitleUpToACap() {
		TieRule rule = new TieRule.WithinUncertainty(new BigDecimal(2), new BigDecimal(6));
		ScoredTree leader = tree(30_000, 1.5, RECENT, null);
		ScoredTree within = tree(29_500, 2, RECENT, null);
		ScoredTree beyond = tree(29_499, 2, RECENT, null);
		ScoredTree sloppy = tree(29_399, 20, RECENT, null);
		assertThat(holders(rule, WhenStale.KEEPS, leader, within, beyond, sloppy)).containsOnlyKeys(leader.tree(),
				within.tree());
	}

	/** Seen last in 2010, more than 12 sighting years ago, but for the last case. */
	@Test
	void aStaleLeaderKeepsItsTitleOnlyWhileSeenLately() {
		ScoredTree current = tree(28_000, RECENT);
		assertThat(holders(points(0), WhenStale.KEEPS, tree(30_000, STALE), current)).containsOnlyKeys(current.tree());
		ScoredTree seen = seen(tree(30_000, STALE), LocalDate.of(2020, 1, 1));
		assertThat(holders(points(0), WhenStale.KEEPS, seen, current)).containsOnlyKeys(seen.tree());
	}

	@Test
	void aStaleTreeLosesItsTitleToACurrentOneWithMorePoints() {
		ScoredTree stale = seen(tree(30_000, STALE), RECENT);
		ScoredTree current = tree(30_001, RECENT);
		assertThat(holders(points(5), WhenStale.KEEPS, stale, current)).containsOnlyKeys(current.tree());
	}

	@Test
	void aStaleLeaderLeavesTheTitleVacantOrPassesIt() {
		ScoredTree stale = tree(30_000, STALE);
		ScoredTree current = tree(28_000, RECENT);
		assertThat(holders(points(0), WhenStale.VACANT, stale, current)).isEmpty();
		assertThat(holders(points(0), WhenStale.PASSES, stale, current)).containsOnlyKeys(current.tree());
		assertThat(holders(points(0), WhenStale.VACANT, tree(27_000, STALE), current)).containsOnlyKeys(current.tree());
	}

	/** A figure that can't take a title can't keep another tree from it either. */
	@ParameterizedTest
	@EnumSource(WhenStale.class)
	void aGirthByBiltmoreStickNeverTakesATitleNorCostsOne(WhenStale whenStale) {
		ScoredTree leader = by(tree(30_000, RECENT), Method.BILTMORE, Method.SINE);
		ScoredTree second = by(tree(29_000, RECENT), Method.TAPE, Method.SINE);
		ScoredTree third = tree(28_900, RECENT);
		assertThat(holders(points(2), whenStale, leader, second, third))
			.containsExactly(Map.entry(second.tree(), Title.CHAMPION), Map.entry(third.tree(), Title.CO_CHAMPION));
		assertThat(holders(points(2), whenStale, leader)).isEmpty();
		ScoredTree stale = by(tree(30_000, STALE), Method.BILTMORE, Method.SINE);
		assertThat(holders(points(2), whenStale, stale, second)).containsOnlyKeys(second.tree());
	}

	@Test
	void onlyTheMethodsThatTheRulebookNamesForAFigureTakeATitle() {
		Rulebook rulebook = new Rulebook(Rulebook.BEGINNING, points(0), 8, WhenStale.KEEPS, 12, 180, 1, false,
				SlopeRule.UPHILL, Tolerances.STANDARD, null, CarryForward.NONE, Rulebook.OLDEST_FILING_MONTHS,
				Rulebook.ANSWER_DAYS, new TitleRules(1, false, Set.of(Method.SINE, Method.TWO_STATION), 0), null);
		ScoredTree stick = by(tree(30_000, RECENT), Method.TAPE, Method.STICK);
		ScoredTree untold = tree(29_500, RECENT);
		ScoredTree sine = by(tree(29_000, RECENT), Method.STRING, Method.SINE);
		assertThat(Holders.of(OAK, List.of(stick, untold, sine), rulebook, TODAY))
			.containsExactly(Map.entry(sine.tree(), Title.CHAMPION));
	}

	/** The 180th day of grace after 3 December 2025 is 1 June 2026. */
	@Test
	void aDamagedTreeHoldsATitleThroughItsDaysOfGrace() {
		ScoredTree damaged = tree(30_000, 1, RECENT, LocalDate.of(2025, 12, 3));
		ScoredTree other = tree(28_000, RECENT);
		assertThat(holders(points(0), WhenStale.KEEPS, damaged, other)).containsOnlyKeys(damaged.tree());
		ScoredTree longer = tree(30_000, 1, RECENT, LocalDate.of(2025, 12, 2));
		assertThat(holders(points(0), WhenStale.KEEPS, longer, other)).containsOnlyKeys(other.tree());
	}

	/**
	 * What a caller may leave out changes nothing: trees under the floor of the best
	 * contender.
	 */
	@ParameterizedTest
	@EnumSource(WhenStale.class)
	void treesUnderTheFloorChangeNothing(WhenStale whenStale) {
		for (long seed = 0; seed < 500; seed++) {
			Random random = new Random(seed);
			Rulebook rulebook = rulebook(randomRule(random), whenStale);
			List<ScoredTree> trees = new ArrayList<>();
			for (int count = random.nextInt(8); count >= 0; count--) {
				trees.add(tree(30_000 - 50 * random.nextInt(20), random.nextInt(3),
						TODAY.minusDays(random.nextInt(6000)), null));
			}
			Contention contention = new Contention(rulebook);
			List<ScoredTree> contenders = trees.stream().filter((tree) -> contention.contends(tree, TODAY)).toList();
			Points best = contenders.stream()
				.map((tree) -> tree.score().points())
				.max(Points::compareTo)
				.orElse(Points.ofHundredths(1));
			List<ScoredTree> down = contenders.stream()
				.filter((tree) -> tree.score().points().compareTo(rulebook.tieRule().floor(best)) >= 0)
				.toList();
			assertThat(Holders.of(OAK, down, rulebook, TODAY)).as("seed " + seed)
				.isEqualTo(Holders.of(OAK, trees, rulebook, TODAY));
		}
	}

	@ParameterizedTest
	@ValueSource(longs = { 1, 2, 3, 4, 5 })
	void theOrderInWhichTreesAreGivenChangesNothing(long seed) {
		Random random = new Random(seed);
		List<ScoredTree> trees = new ArrayList<>();
		for (int count = 0; count < 8; count++) {
			trees.add(tree(30_000 - 100 * random.nextInt(5), RECENT));
		}
		Map<UUID, Title> holders = Holders.of(OAK, trees, rulebook(points(2), WhenStale.KEEPS), TODAY);
		java.util.Collections.shuffle(trees, random);
		assertThat(Holders.of(OAK, trees, rulebook(points(2), WhenStale.KEEPS), TODAY)).isEqualTo(holders);
	}

	private static TieRule randomRule(Random random) {
		return switch (random.nextInt(3)) {
			case 0 -> points(random.nextInt(6));
			case 1 -> new TieRule.WithinPercent(new BigDecimal(random.nextInt(3)));
			default -> new TieRule.WithinUncertainty(new BigDecimal(random.nextInt(3)), new BigDecimal(3));
		};
	}

	private static Map<UUID, Title> holders(TieRule rule, WhenStale whenStale, ScoredTree... trees) {
		return Holders.of(OAK, List.of(trees), rulebook(rule, whenStale), TODAY);
	}

	private static TieRule points(int n) {
		return new TieRule.WithinPoints(new BigDecimal(n));
	}

	private static Rulebook rulebook(TieRule rule, WhenStale whenStale) {
		return new Rulebook(Rulebook.BEGINNING, rule, 8, whenStale, 12, 180, 1, false, SlopeRule.UPHILL,
				Tolerances.STANDARD, null, CarryForward.NONE, Rulebook.OLDEST_FILING_MONTHS, Rulebook.ANSWER_DAYS,
				TitleRules.NONE, null);
	}

	private static Rulebook listing(String... species) {
		return new Rulebook(Rulebook.BEGINNING, points(5), 8, WhenStale.KEEPS, 12, 180, 1, false, SlopeRule.UPHILL,
				Tolerances.STANDARD, null, CarryForward.NONE, Rulebook.OLDEST_FILING_MONTHS, Rulebook.ANSWER_DAYS,
				TitleRules.NONE, Set.of(species));
	}

	private static ScoredTree tree(int hundredths, LocalDate measuredOn) {
		return tree(hundredths, 1, measuredOn, null);
	}

	private static ScoredTree tree(int hundredths, double uncertainty, LocalDate measuredOn,
			@Nullable LocalDate lostOn) {
		return new ScoredTree(UUID.randomUUID(), UUID.randomUUID(),
				new Score(Points.ofHundredths(hundredths), uncertainty), measuredOn, measuredOn, lostOn, false);
	}

	private static ScoredTree by(ScoredTree tree, Method girth, Method height) {
		return new ScoredTree(tree.tree(), tree.measurement(), tree.score(), tree.measuredOn(), tree.seenOn(), null,
				false, CarriedFrom.NOTHING, new FigureMethods(girth, height, Method.AXES));
	}

	private static ScoredTree seen(ScoredTree tree, LocalDate seenOn) {
		return new ScoredTree(tree.tree(), tree.measurement(), tree.score(), tree.measuredOn(), seenOn, null, false);
	}

}

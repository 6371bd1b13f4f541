package county.bigtree.domain.standing;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import county.bigtree.domain.points.Points;
import county.bigtree.domain.points.Score;
import county.bigtree.domain.review.Tolerances;
import county.bigtree.domain.rulebook.CarryForward;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.measuring.SlopeRule;
import county.bigtree.domain.rulebook.TieRule;
import county.bigtree.domain.rulebook.TitleRules;
import county.bigtree.domain.rulebook.WhenStale;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * What a tree lacks for a title: common practice of county registers, no source; each
 * case worked by hand.
 */
class WhatItTakesTest {

	private static final LocalDate TODAY = LocalDate.of(2026, 6, 1);

	private static final LocalDate STALE = LocalDate.of(2010, 6, 1);

	@Test
	void aTreeWithoutRivalsLacksNothing() {
		assertThat(lacks(points("5"), tree(100, 2, TODAY))).isEqualTo(lacking("0.00", "0.00"));
	}

	@Test
	void equalPointsLead() {
		assertThat(lacks(points("5"), tree(30_000, 2, TODAY), tree(30_000, 2, TODAY)))
			.isEqualTo(lacking("0.00", "0.00"));
		assertThat(lacks(points("5"), tree(29_200, 2, TODAY), tree(30_000, 2, TODAY)))
			.isEqualTo(lacking("8.00", "3.00"));
		assertThat(lacks(points("5"), tree(31_000, 2, TODAY), tree(30_000, 2, TODAY)))
			.isEqualTo(lacking("0.00", "0.00"));
	}

	/** 2 % of 300.5 points are 6.01. */
	@Test
	void heedsTheRuleOfPercent() {
		assertThat(lacks(new TieRule.WithinPercent(new BigDecimal(2)), tree(29_000, 2, TODAY), tree(30_050, 2, TODAY)))
			.isEqualTo(lacking("10.50", "4.49"));
	}

	/** 2 × √(1.5² + 2²) = 5 points, and never more than 6. */
	@Test
	void heedsTheRuleOfUncertaintyAndItsCap() {
		TieRule rule = new TieRule.WithinUncertainty(new BigDecimal(2), new BigDecimal(6));
		assertThat(lacks(rule, tree(29_000, 2, TODAY), tree(30_000, 1.5, TODAY))).isEqualTo(lacking("10.00", "5.00"));
		assertThat(lacks(rule, tree(29_000, 9, TODAY), tree(30_000, 1.5, TODAY))).isEqualTo(lacking("10.00", "4.00"));
	}

	/** A stale tree of 300 points: who may pass it depends on the county's rule. */
	@Test
	void heedsWhatAStaleTreeDoesToTheTitle() {
		ScoredTree tree = tree(29_000, 2, TODAY);
		ScoredTree stale = tree(30_000, 2, STALE);
		assertThat(lacks(points("5"), WhenStale.VACANT, tree, stale)).isEqualTo(lacking("10.00", "10.00"));
		assertThat(lacks(points("5"), WhenStale.PASSES, tree, stale)).isEqualTo(lacking("0.00", "0.00"));
	}

	private static WhatItTakes lacks(TieRule rule, ScoredTree tree, ScoredTree... others) {
		return lacks(rule, WhenStale.KEEPS, tree, others);
	}

	private static WhatItTakes lacks(TieRule rule, WhenStale whenStale, ScoredTree tree, ScoredTree... others) {
		Rulebook rulebook = new Rulebook(Rulebook.BEGINNING, rule, 8, whenStale, 12, 180, 1, false, SlopeRule.UPHILL,
				Tolerances.STANDARD, null, CarryForward.NONE, Rulebook.OLDEST_FILING_MONTHS, Rulebook.ANSWER_DAYS,
				TitleRules.NONE, null);
		return WhatItTakes.of(List.of(others), tree, rulebook, TODAY);
	}

	private static WhatItTakes lacking(String toLead, String toShare) {
		return new WhatItTakes(new BigDecimal(toLead), new BigDecimal(toShare));
	}

	private static TieRule points(String n) {
		return new TieRule.WithinPoints(new BigDecimal(n));
	}

	private static ScoredTree tree(int hundredths, double uncertainty, LocalDate measuredOn) {
		return new ScoredTree(UUID.randomUUID(), UUID.randomUUID(),
				new Score(Points.ofHundredths(hundredths), uncertainty), measuredOn, measuredOn, null, false);
	}

}

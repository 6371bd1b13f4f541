package county.bigtree.registry.standing;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import county.bigtree.domain.measuring.FigureMethods;
import county.bigtree.domain.points.Comparison;
import county.bigtree.domain.points.LeadsAll;
import county.bigtree.domain.points.Score;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.standing.CarriedFrom;
import county.bigtree.domain.standing.Holders;
import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.domain.standing.Title;
import county.bigtree.domain.standing.WhatItTakes;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.rules.CountyRules;
import county.bigtree.registry.rules.RulesReader;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Says how a tree measured today would stand among those on the books, which it is not.
 */
@Service
public class ComparePoints {

	private static final UUID CANDIDATE = new UUID(0, 0);

	private final ScoresAsOf scores;

	private final ScoreRows rows;

	private final RulesReader rules;

	private final RegisterClock clock;

	ComparePoints(ScoresAsOf scores, ScoreRows rows, RulesReader rules, RegisterClock clock) {
		this.scores = scores;
		this.rows = rows;
		this.rules = rules;
		this.clock = clock;
	}

	/**
	 * Compares the score with the open scores of a species in a county of the register.
	 */
	@Transactional(readOnly = true)
	public Compared compare(String county, String species, Score score, FigureMethods methods) {
		BookKey book = new BookKey(county, species);
		CountyRules countyRules = this.rules.get(county);
		Instant now = this.clock.now();
		AsOf today = new AsOf(countyRules.day(now), now, true);
		Rulebook rulebook = countyRules.on(today.day(), now);
		Score leader = this.scores.ranked(book, today, null, 1)
			.stream()
			.map(ScoredTree::score)
			.findFirst()
			.orElse(null);
		int rank = this.scores.ahead(book, today, score.points()) + 1;
		List<ScoredTree> contenders = this.rows.contenders(book, rulebook).stream().map(ScoreRow::scored).toList();
		ScoredTree candidate = new ScoredTree(CANDIDATE, CANDIDATE, score, today.day(), today.day(), null, false,
				CarriedFrom.NOTHING, methods);
		List<ScoredTree> all = new ArrayList<>(contenders);
		all.add(candidate);
		return new Compared((leader != null) ? Comparison.of(score, leader) : null, leader, rank,
				Holders.of(species, all, rulebook, today.day()).get(CANDIDATE),
				(rulebook.admits(species) && rulebook.title().allow(methods))
						? WhatItTakes.of(contenders, candidate, rulebook, today.day()) : null,
				leadsAll(book, today, score, rulebook));
	}

	private @Nullable Double leadsAll(BookKey book, AsOf today, Score score, Rulebook rulebook) {
		if (this.scores.firstCurrent(book, today, rulebook).isEmpty()) {
			return null;
		}
		List<Score> rivals = this.scores.rivals(book, today, score, rulebook).stream().map(ScoredTree::score).toList();
		return LeadsAll.of(score, rivals).probability();
	}

	/**
	 * How a score stands.
	 *
	 * @param toLeader how it stands to the leader; null where none is on the books
	 * @param leader the score with the most points on the books
	 * @param wouldRank its rank
	 * @param wouldHold the title it would hold, or null
	 * @param takes what it lacks for a title; null where its figures were taken by a
	 * method that takes none, or the species holds none here
	 * @param leadsAll the probability that it is truly larger than every current tree;
	 * null where there are none
	 */
	public record Compared(@Nullable Comparison toLeader, @Nullable Score leader, int wouldRank,
			@Nullable Title wouldHold, @Nullable WhatItTakes takes, @Nullable Double leadsAll) {

		/** Points less than the leader's, at least 0. */
		public BigDecimal behind() {
			return (this.toLeader == null) ? BigDecimal.ZERO : this.toLeader.margin().negate().max(BigDecimal.ZERO);
		}

	}

}

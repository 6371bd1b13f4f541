package county.bigtree.registry.standing;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.domain.points.Score;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.standing.Holders;
import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.domain.standing.Title;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.rules.CountyRules;
import county.bigtree.registry.rules.RulesReader;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Says how a tree measured today would stand among those on the books, which it is not.
 */
@Service
public class ComparePoints {

	private static final UUID CANDIDATE = new UUID(0, 0);

	private final JdbcClient jdbc;

	private final ScoreRows rows;

	private final RulesReader rules;

	private final RegisterClock clock;

	ComparePoints(JdbcClient jdbc, ScoreRows rows, RulesReader rules, RegisterClock clock) {
		this.jdbc = jdbc;
		this.rows = rows;
		this.rules = rules;
		this.clock = clock;
	}

	/**
	 * Compares the score with the open scores of a species in a county of the register.
	 */
	@Transactional(readOnly = true)
	public Compared compare(String county, String species, Score score) {
		BigDecimal points = score.points().toBigDecimal();
		Optional<BigDecimal> leader = open("select max(points)", county, species).query(BigDecimal.class).optional();
		long ahead = open("select count(*)", county, species, points).query(Long.class).single();
		BigDecimal behind = leader.map((most) -> most.subtract(points).max(BigDecimal.ZERO)).orElse(BigDecimal.ZERO);
		return new Compared(leader.orElse(null), behind, ahead + 1, wouldHold(county, species, score).orElse(null));
	}

	private JdbcClient.StatementSpec open(String select, String county, String species) {
		return open(select, county, species, new BigDecimal(-1));
	}

	private JdbcClient.StatementSpec open(String select, String county, String species, BigDecimal above) {
		return this.jdbc.sql(select + """
				from score where county = ? and species = ? and withdrawn_at is null and ends_on is null
				 and points > ?""").params(county, species, above);
	}

	private Optional<Title> wouldHold(String county, String species, Score score) {
		CountyRules countyRules = this.rules.get(county);
		LocalDate today = countyRules.day(this.clock.now());
		Rulebook rulebook = countyRules.on(today, this.clock.now());
		List<ScoredTree> trees = new ArrayList<>();
		this.rows.contenders(new BookKey(county, species), rulebook).forEach((row) -> trees.add(row.scored()));
		trees.add(new ScoredTree(CANDIDATE, CANDIDATE, score, today, today, null, false));
		return Optional.ofNullable(Holders.of(trees, rulebook, today).get(CANDIDATE));
	}

	/**
	 * How a score stands.
	 *
	 * @param leaderPoints the most points on the books; null where none are
	 * @param behind points less than that, at least 0
	 * @param wouldRank its rank
	 * @param wouldHold the title it would hold, or null
	 */
	public record Compared(@Nullable BigDecimal leaderPoints, BigDecimal behind, long wouldRank,
			@Nullable Title wouldHold) {
	}

}

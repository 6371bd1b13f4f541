package county.bigtree.registry.standing;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.standing.Holders;
import county.bigtree.domain.standing.ScoreSpan;
import county.bigtree.domain.standing.ScoreSpans;
import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.domain.standing.Title;
import county.bigtree.domain.standing.TreeFacts;
import county.bigtree.domain.standing.TreeFacts.Measured;
import county.bigtree.domain.standing.TreeFacts.SignedOff;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.rules.CountyRules;
import county.bigtree.registry.rules.RulesReader;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Says which title a tree would hold today if a measurement that waits for its sign-offs
 * counted: its score is then that of the facts with this one changed, in place of the
 * score it has.
 */
@Service
public class TitleIfCounted {

	private final TreeFactsReader facts;

	private final ScoreRows rows;

	private final RulesReader rules;

	private final RegisterClock clock;

	private final JdbcClient jdbc;

	TitleIfCounted(TreeFactsReader facts, ScoreRows rows, RulesReader rules, RegisterClock clock, JdbcClient jdbc) {
		this.facts = facts;
		this.rows = rows;
		this.rules = rules;
		this.clock = clock;
		this.jdbc = jdbc;
	}

	/**
	 * The title; empty where it would hold none. The county was brought up to today.
	 * @param book in which the tree is or would be ranked
	 * @param tree a tree that is not merged into another
	 * @param points those of the measurement
	 */
	@Transactional(readOnly = true)
	public Optional<Title> of(BookKey book, UUID tree, UUID measurement, BigDecimal points) {
		CountyRules county = this.rules.get(book.county());
		Instant now = this.clock.now();
		LocalDate today = county.day(now);
		Rulebook rulebook = county.on(today, now);
		boolean tooFew = this.rows.floor(book, rulebook, tree)
			.filter((least) -> ScoreRows.points(points).compareTo(least) < 0)
			.isPresent();
		return tooFew ? Optional.empty() : of(book, tree, measurement, rulebook, today);
	}

	/**
	 * The title that would rest on the measurement by the rules of the day.
	 */
	Optional<Title> of(BookKey book, UUID tree, UUID measurement, Rulebook rulebook, LocalDate today) {
		PlacedTree placed = this.facts.read(tree, TreeScores.EVERYTHING);
		if (!book.equals(placed.book())) {
			return Optional.empty();
		}
		List<Measured> measurements = placed.facts()
			.measurements()
			.stream()
			.map((one) -> one.measurement().equals(measurement) ? counting(one) : one)
			.toList();
		return scored(new TreeFacts(tree, mayBeRanked(tree), measurements, placed.facts().conditions(),
				placed.facts().rulings()))
			.filter((scored) -> restsOn(scored, measurement))
			.flatMap((scored) -> Optional.ofNullable(holders(book, tree, scored, rulebook, today).get(tree)));
	}

	/**
	 * Who would hold the titles of a book today if a tree had this score, or none.
	 */
	Map<UUID, Title> holders(BookKey book, UUID tree, @Nullable ScoredTree scored, Rulebook rulebook, LocalDate today) {
		List<ScoredTree> trees = new ArrayList<>();
		this.rows.contendersBut(tree, book, rulebook).forEach((row) -> trees.add(row.scored()));
		if (scored != null) {
			trees.add(scored);
		}
		return Holders.of(book.species(), trees, rulebook, today);
	}

	/**
	 * The score that a tree of such facts has now.
	 */
	static Optional<ScoredTree> scored(TreeFacts facts) {
		return ScoreSpans.of(facts).stream().filter((span) -> span.until() == null).map(ScoreSpan::scored).findFirst();
	}

	private static boolean restsOn(ScoredTree scored, UUID measurement) {
		return scored.measurement().equals(measurement) || measurement.equals(scored.from().height())
				|| measurement.equals(scored.from().crown());
	}

	/**
	 * Whether nothing keeps the tree from the books once it is accepted, which a
	 * measurement that counts would make it.
	 */
	boolean mayBeRanked(UUID tree) {
		return this.jdbc
			.sql("""
					select coalesce((select eligible from eligibility where tree = :tree order by recorded_at desc limit 1), true)
					  and not exists (select from taking_off where tree = :tree)""")
			.param("tree", tree)
			.query(Boolean.class)
			.single();
	}

	private static Measured counting(Measured one) {
		return new Measured(one.measurement(), one.measuredOn(), one.filedAt(), one.figures(), one.carriedOver(), false,
				null, 1, List.of(new SignedOff(TreeFacts.Verdict.CONFIRMED, false, false, false)));
	}

}

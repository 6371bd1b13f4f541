package county.bigtree.registry.standing;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
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
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Says which title a tree would hold today if a measurement that waits for its sign-offs
 * counted: its score is then that of the facts with this one changed, in place of the
 * score it has.
 */
@Component
class TitleIfCounted {

	private final TreeFactsReader facts;

	private final ScoreRows rows;

	private final JdbcClient jdbc;

	TitleIfCounted(TreeFactsReader facts, ScoreRows rows, JdbcClient jdbc) {
		this.facts = facts;
		this.rows = rows;
		this.jdbc = jdbc;
	}

	/**
	 * The title that would rest on the measurement by the rules of the day.
	 */
	Optional<Title> of(BookKey book, UUID tree, UUID measurement, Rulebook rulebook, LocalDate today) {
		PlacedTree placed = this.facts.read(tree, TreeScores.EVERYTHING);
		if (!book.equals(placed.book())) {
			return Optional.empty();
		}
		return scored(placed, mayBeRanked(tree), measurement)
			.flatMap((scored) -> Optional.ofNullable(holders(book, tree, scored, rulebook, today).get(tree)));
	}

	/**
	 * The score that a tree would have now if a measurement counted; empty where it would
	 * have none, or one that rests on others.
	 */
	static Optional<ScoredTree> scored(PlacedTree placed, boolean mayBeRanked, UUID measurement) {
		TreeFacts facts = placed.facts();
		List<Measured> measurements = facts.measurements()
			.stream()
			.map((one) -> one.measurement().equals(measurement) ? counting(one) : one)
			.toList();
		return scored(new TreeFacts(facts.tree(), mayBeRanked, measurements, facts.conditions(), facts.rulings()))
			.filter((scored) -> restsOn(scored, measurement));
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
		return mayBeRanked(Set.of(tree)).contains(tree);
	}

	/**
	 * Those of the trees of which the same is true.
	 */
	Set<UUID> mayBeRanked(Set<UUID> trees) {
		return Set.copyOf(this.jdbc
			.sql("""
					select t.id from unnest(:trees) as t (id)
					where coalesce((select eligible from eligibility where tree = t.id order by recorded_at desc limit 1), true)
					  and not exists (select from taking_off where tree = t.id)""")
			.param("trees", trees.toArray(UUID[]::new))
			.query(UUID.class)
			.list());
	}

	private static Measured counting(Measured one) {
		return new Measured(one.measurement(), one.measuredOn(), one.filedAt(), one.figures(), one.carriedOver(), false,
				null, 1, List.of(new SignedOff(TreeFacts.Verdict.CONFIRMED, false, false, false)));
	}

}

package county.bigtree.registry.standing;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.BiFunction;

import county.bigtree.domain.points.LeadsAll;
import county.bigtree.domain.points.Points;
import county.bigtree.domain.points.Score;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.standing.Contention;
import county.bigtree.domain.standing.Holders;
import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.domain.standing.Title;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The scores of a book on a day as known at an instant: a range of the score table's two
 * times, never a recomputation.
 */
@Component
class ScoresAsOf {

	/**
	 * The rows that hold on :day as known at :known.
	 */
	static final String HOLDS = """
			effective_on <= :day and recorded_at <= :known and (withdrawn_at is null or withdrawn_at > :known)
			  and (ends_on is null or ends_on > :day or closed_at > :known)
			""";

	private static final String OPEN = "withdrawn_at is null and ends_on is null ";

	private static final int BATCH = 200;

	/** Most trees are current, and so is one of the next few. */
	static final int FEW = 8;

	/**
	 * Six standard uncertainties of a margin: one order this clear in a thousand million
	 * is wrong, so that not even ten thousand trees left out show in four places. The
	 * first condition follows from the second, as no square root of a sum of squares
	 * exceeds the sum, and is what the index score_within_doubt answers.
	 */
	private static final String WITHIN_DOUBT = """
			and points + 6 * points_u >= :points - 6 * :u
			 and points >= :points - 6 * sqrt(:u * :u + points_u * points_u)""";

	private final JdbcClient jdbc;

	ScoresAsOf(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * Scores in ranking order.
	 * @param after the last score already seen, or null to begin
	 */
	List<ScoredTree> ranked(BookKey book, AsOf asOf, @Nullable ScoredTree after, int limit) {
		String seen = (after != null) ? " and (points < :points or (points = :points and tree > :tree))" : "";
		JdbcClient.StatementSpec query = ask("""
				select tree, measurement, points, points_u, measured_on, seen_on, lost_on, carried_over, height_from,
				  crown_from, girth_by, height_by, crown_by
				from score where county = :county and species = :species and
				""" + holds(asOf) + seen + " order by points desc, tree limit :limit", book, asOf).param("limit",
				limit);
		if (after != null) {
			query = query.param("points", after.score().points().toBigDecimal()).param("tree", after.tree());
		}
		return query.query((row, number) -> ScoreRows.scored(row)).list();
	}

	/**
	 * The first score after the given one whose measurement is current.
	 */
	List<ScoredTree> nextCurrent(BookKey book, AsOf asOf, ScoredTree after, Rulebook rulebook) {
		return nextCurrent((last, batch) -> ranked(book, asOf, last, batch), asOf, after, rulebook);
	}

	/**
	 * The first score of all whose measurement is current.
	 */
	List<ScoredTree> firstCurrent(BookKey book, AsOf asOf, Rulebook rulebook) {
		return nextCurrent((last, batch) -> ranked(book, asOf, last, batch), asOf, null, rulebook);
	}

	/**
	 * The same of any ranking that is read in batches.
	 * @param ranking gives the next scores after one, so many of them
	 */
	static List<ScoredTree> nextCurrent(BiFunction<@Nullable ScoredTree, Integer, List<ScoredTree>> ranking, AsOf asOf,
			@Nullable ScoredTree after, Rulebook rulebook) {
		Contention contention = new Contention(rulebook);
		ScoredTree last = after;
		int limit = FEW;
		while (true) {
			List<ScoredTree> batch = ranking.apply(last, limit);
			for (ScoredTree tree : batch) {
				if (!contention.stale(tree, asOf.day())) {
					return List.of(tree);
				}
			}
			if (batch.size() < limit) {
				return List.of();
			}
			last = batch.get(batch.size() - 1);
			limit = BATCH;
		}
	}

	/**
	 * The first current tree of the first page with the probability that it is truly
	 * larger than every other current tree; empty where there are no others.
	 * @param known the page and what is known of the ranking after it
	 */
	Map<UUID, Double> leadsAll(BookKey book, AsOf asOf, List<ScoredTree> page, List<ScoredTree> known,
			Rulebook rulebook) {
		Contention contention = new Contention(rulebook);
		ScoredTree first = page.stream().filter((tree) -> !contention.stale(tree, asOf.day())).findFirst().orElse(null);
		if (first == null) {
			return Map.of();
		}
		boolean others = known.stream()
			.filter((tree) -> !contention.stale(tree, asOf.day()))
			.skip(1)
			.findAny()
			.isPresent();
		if (!others && nextCurrent(book, asOf, first, rulebook).isEmpty()) {
			return Map.of();
		}
		List<Score> rivals = rivals(book, asOf, first.score(), rulebook).stream()
			.filter((tree) -> !tree.tree().equals(first.tree()))
			.map(ScoredTree::score)
			.toList();
		return Map.of(first.tree(), LeadsAll.of(first.score(), rivals).probability());
	}

	/**
	 * The current trees that could truly be larger than one of this score: all but those
	 * farther below it than {@link #WITHIN_DOUBT}.
	 */
	List<ScoredTree> rivals(BookKey book, AsOf asOf, Score score, Rulebook rulebook) {
		Contention contention = new Contention(rulebook);
		return ask("""
				select tree, measurement, points, points_u, measured_on, seen_on, lost_on, carried_over, height_from,
				  crown_from, girth_by, height_by, crown_by
				from score where county = :county and species = :species and
				""" + holds(asOf) + WITHIN_DOUBT, book, asOf).param("points", score.points().toBigDecimal())
			.param("u", BigDecimal.valueOf(score.standardUncertainty()))
			.query((row, number) -> ScoreRows.scored(row))
			.list()
			.stream()
			.filter((tree) -> !contention.stale(tree, asOf.day()))
			.toList();
	}

	/**
	 * How many trees are ranked. Today's are counted by the book.
	 */
	int total(BookKey book, AsOf asOf) {
		if (asOf.present()) {
			return this.jdbc.sql("select trees from book where county = ? and species = ?")
				.params(book.county(), book.species())
				.query(Integer.class)
				.optional()
				.orElse(0);
		}
		return ask("select count(*) from score where county = :county and species = :species and " + holds(asOf), book,
				asOf)
			.query(Integer.class)
			.single();
	}

	/**
	 * How many scores have more points.
	 */
	int ahead(BookKey book, AsOf asOf, Points points) {
		return ask("select count(*) from score where county = :county and species = :species and points > :points and "
				+ holds(asOf), book, asOf)
			.param("points", points.toBigDecimal())
			.query(Integer.class)
			.single();
	}

	/**
	 * The holders of the book's titles by the rules given.
	 */
	Map<UUID, Title> holders(BookKey book, AsOf asOf, Rulebook rulebook) {
		return Holders.of(book.species(), downToFloor(book, asOf, rulebook), rulebook, asOf.day());
	}

	private List<ScoredTree> downToFloor(BookKey book, AsOf asOf, Rulebook rulebook) {
		Contention contention = new Contention(rulebook);
		List<ScoredTree> contenders = new ArrayList<>();
		ScoredTree last = null;
		while (true) {
			List<ScoredTree> batch = ranked(book, asOf, last, BATCH);
			for (ScoredTree tree : batch) {
				if (!contenders.isEmpty() && tree.score()
					.points()
					.compareTo(rulebook.tieRule().floor(contenders.get(0).score().points())) < 0) {
					return contenders;
				}
				if (contention.contends(tree, asOf.day())) {
					contenders.add(tree);
				}
			}
			if (batch.size() < BATCH) {
				return contenders;
			}
			last = batch.get(batch.size() - 1);
		}
	}

	static String holds(AsOf asOf) {
		return asOf.present() ? OPEN : HOLDS;
	}

	private JdbcClient.StatementSpec ask(String sql, BookKey book, AsOf asOf) {
		JdbcClient.StatementSpec query = this.jdbc.sql(sql)
			.param("county", book.county())
			.param("species", book.species());
		return asOf.present() ? query : query.param("day", asOf.day()).param("known", SqlTime.of(asOf.knownAt()));
	}

}

package county.bigtree.registry.standing;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.OptionalLong;
import java.util.Set;
import java.util.SortedSet;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import county.bigtree.domain.standing.ScoreSpan;
import county.bigtree.domain.standing.ScoreSpans;
import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;
import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The scores recorded of each tree are, at each instant at which anything was known of
 * it, those that follow from its facts as known then.
 */
@Component
@Order(4)
class ScoreCheck implements RegisterCheck {

	private static final int FETCH = 2000;

	/**
	 * The database's order, which is not that of {@link UUID#compareTo}.
	 */
	private static final Comparator<UUID> UUID_ORDER = Comparator
		.comparing(UUID::getMostSignificantBits, Long::compareUnsigned)
		.thenComparing(UUID::getLeastSignificantBits, Long::compareUnsigned);

	private final JdbcClient jdbc;

	private final Mended mended;

	ScoreCheck(JdbcClient jdbc, Mended mended) {
		this.jdbc = jdbc;
		this.mended = mended;
	}

	@Override
	public String subject() {
		return "trees, their scores at every instant recorded";
	}

	@Override
	public OptionalLong expected() {
		return OptionalLong.of(this.jdbc.sql("select count(*) from tree").query(Long.class).single());
	}

	@Override
	public void look(Findings findings) {
		Map<String, Instant> mendedAt = this.mended.lastByCounty();
		Folds folds = Folds.read(this.jdbc);
		try (Stream<TreeHistory.Told> facts = facts(); Stream<Recorded> scores = scores()) {
			ByTree<TreeHistory.Told> told = new ByTree<>(facts.iterator(), TreeHistory.Told::tree);
			ByTree<Recorded> recorded = new ByTree<>(scores.iterator(), Recorded::tree);
			while (told.hasNext()) {
				UUID tree = told.next();
				strayBefore(tree, recorded, findings);
				compare(tree, new TreeHistory(told.take(tree), folds), recorded.take(tree), mendedAt, findings);
				findings.looked();
			}
			strayBefore(null, recorded, findings);
		}
	}

	private static void strayBefore(@Nullable UUID tree, ByTree<Recorded> recorded, Findings findings) {
		while (recorded.hasNext() && (tree == null || UUID_ORDER.compare(recorded.next(), tree) < 0)) {
			findings.add("Tree %s has scores but nothing is known of it".formatted(recorded.next()));
			recorded.take(recorded.next());
		}
	}

	/**
	 * The first instant at which they differ, if any, stands for those that follow.
	 */
	private static void compare(UUID tree, TreeHistory history, List<Recorded> recorded, Map<String, Instant> mendedAt,
			Findings findings) {
		SortedSet<Instant> instants = history.instants();
		recorded.forEach((row) -> row.instants().forEach(instants::add));
		for (Instant known : instants) {
			Set<Placed> expected = expected(history.at(known));
			List<Placed> found = recorded.stream()
				.filter((row) -> row.known(known))
				.map((row) -> row.placedAt(known))
				.toList();
			if (found.size() == expected.size() && expected.equals(new HashSet<>(found))) {
				continue;
			}
			String sentence = "Tree %s as known at %s: recorded is %s, its facts give %s".formatted(tree, known,
					told(found), told(expected));
			if (!Mended.since(known, mendedAt, Stream.concat(found.stream(), expected.stream()).map(Placed::county))) {
				findings.add(sentence);
				return;
			}
			findings.addMended(sentence);
		}
	}

	private static Set<Placed> expected(PlacedTree placed) {
		BookKey book = placed.book();
		return (book == null) ? Set.of()
				: ScoreSpans.of(placed.facts())
					.stream()
					.map((span) -> new Placed(book, span))
					.collect(Collectors.toSet());
	}

	private static String told(Collection<Placed> scores) {
		return scores.stream()
			.sorted(Comparator.comparing((Placed placed) -> placed.span().from()))
			.map(Placed::told)
			.collect(Collectors.joining("; ", "[", "]"));
	}

	private Stream<TreeHistory.Told> facts() {
		return this.jdbc.sql(TreeHistory.FACTS)
			.withFetchSize(FETCH)
			.query((row, number) -> TreeHistory.Told.of(row))
			.stream();
	}

	private Stream<Recorded> scores() {
		return this.jdbc.sql("select * from score order by tree, id")
			.withFetchSize(FETCH)
			.query((row, number) -> Recorded.of(row))
			.stream();
	}

	/**
	 * A score span in its book.
	 */
	private record Placed(BookKey book, ScoreSpan span) {

		String county() {
			return this.book.county();
		}

		String told() {
			return "%s/%s %s points from %s to %s (%s)".formatted(this.book.county(), this.book.species(),
					this.span.scored().score().points().toBigDecimal(), this.span.from(),
					(this.span.until() != null) ? this.span.until() : "now", this.span.scored().measurement());
		}

	}

	/**
	 * A row of the score table with the instants of what was known.
	 *
	 * @param book where it stands
	 * @param last the span by all that is known
	 */
	private record Recorded(BookKey book, ScoreSpan last, Instant recordedAt, @Nullable Instant closedAt,
			@Nullable Instant withdrawnAt) {

		static Recorded of(ResultSet row) throws SQLException {
			ScoreRow score = ScoreRows.row(row, 0);
			return new Recorded(score.book(), score.span(), SqlTime.get(row, "recorded_at"),
					SqlTime.find(row, "closed_at"), SqlTime.find(row, "withdrawn_at"));
		}

		UUID tree() {
			return this.last.scored().tree();
		}

		Stream<Instant> instants() {
			return Stream.of(this.recordedAt, this.closedAt, this.withdrawnAt).filter((instant) -> instant != null);
		}

		boolean known(Instant at) {
			return !this.recordedAt.isAfter(at) && (this.withdrawnAt == null || this.withdrawnAt.isAfter(at));
		}

		Placed placedAt(Instant at) {
			boolean closed = this.closedAt != null && !this.closedAt.isAfter(at);
			return new Placed(this.book,
					closed ? this.last : new ScoreSpan(this.last.scored(), this.last.from(), null, null));
		}

	}

	/**
	 * Rows that come in the database's order of their trees, taken a tree at a time.
	 */
	private static final class ByTree<T> {

		private final Iterator<T> rows;

		private final Function<T, UUID> tree;

		private @Nullable T next;

		ByTree(Iterator<T> rows, Function<T, UUID> tree) {
			this.rows = rows;
			this.tree = tree;
			advance();
		}

		boolean hasNext() {
			return this.next != null;
		}

		UUID next() {
			if (this.next == null) {
				throw new NoSuchElementException();
			}
			return this.tree.apply(this.next);
		}

		List<T> take(UUID of) {
			List<T> taken = new ArrayList<>();
			while (this.next != null && this.tree.apply(this.next).equals(of)) {
				taken.add(this.next);
				advance();
			}
			return taken;
		}

		private void advance() {
			this.next = this.rows.hasNext() ? this.rows.next() : null;
		}

	}

}

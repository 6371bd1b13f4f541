package county.bigtree.registry.standing;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;

import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.standing.ScoreSpan;
import county.bigtree.domain.standing.ScoreSpans;
import county.bigtree.domain.standing.TitleReason;
import county.bigtree.registry.journal.Change;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/**
 * The difference between the score rows a tree has and those it should have, which are a
 * pure function of its facts.
 */
@Component
class TreeScores {

	/**
	 * Later than any instant recorded: all that is known.
	 */
	static final Instant EVERYTHING = Instant.parse("9000-01-01T00:00:00Z");

	private final TreeFactsReader factsReader;

	private final ScoreRows rows;

	TreeScores(TreeFactsReader factsReader, ScoreRows rows) {
		this.factsReader = factsReader;
		this.rows = rows;
	}

	/**
	 * The trees themselves and those into which they are merged: what is known of a tree
	 * bears on the one that is kept.
	 */
	Set<UUID> withKept(Collection<UUID> trees) {
		Set<UUID> all = new LinkedHashSet<>(trees);
		Map<UUID, UUID> kept = this.factsReader.keptTrees(all);
		trees.forEach((tree) -> all.add(Objects.requireNonNull(kept.get(tree))));
		return all;
	}

	/**
	 * The differences of trees, by as many statements as for one unless they are merged.
	 * @param trees from {@link #withKept}
	 */
	List<Difference> differences(Set<UUID> trees) {
		if (trees.size() == 1 || this.factsReader.keptTrees(trees).entrySet().stream().anyMatch(TreeScores::merged)) {
			return trees.stream().map(this::difference).toList();
		}
		Map<UUID, PlacedTree> placed = this.factsReader.readAll(trees, EVERYTHING);
		Map<UUID, List<ScoreRow>> live = this.rows.live(trees);
		return trees.stream()
			.map((tree) -> difference(Objects.requireNonNull(placed.get(tree)), live.getOrDefault(tree, List.of())))
			.toList();
	}

	private static boolean merged(Map.Entry<UUID, UUID> kept) {
		return !kept.getKey().equals(kept.getValue());
	}

	Difference difference(UUID tree) {
		return difference(this.factsReader.read(tree, EVERYTHING), this.rows.live(tree));
	}

	private static Difference difference(PlacedTree placed, List<ScoreRow> live) {
		return Difference.between(live, placed.book(),
				(placed.book() != null) ? ScoreSpans.of(placed.facts()) : List.of());
	}

	/**
	 * Writes the difference: withdrawals first, then closings, then new rows, so that no
	 * two rows of the tree ever hold on one day.
	 */
	void write(Change change, Difference difference, TitleReason reason, Function<BookKey, Rulebook> rulebookToday) {
		difference.withdrawn().forEach((row) -> this.rows.withdraw(change, row, reason.word()));
		difference.closed().forEach((closing) -> this.rows.close(change, closing.row(), closing.span()));
		BookKey book = difference.book();
		if (book != null) {
			difference.added()
				.forEach((span) -> this.rows.insert(change, book, span, rulebookToday.apply(book),
						change.today(book.county())));
		}
	}

	/**
	 * What has to be written.
	 *
	 * @param book the book in which the tree now stands, if any
	 * @param live the rows it has
	 * @param withdrawn rows that no longer hold
	 * @param closed open rows that have ended
	 * @param added spans that have no row yet
	 */
	record Difference(@Nullable BookKey book, List<ScoreRow> live, List<ScoreRow> withdrawn, List<Closing> closed,
			List<ScoreSpan> added) {

		static Difference between(List<ScoreRow> live, @Nullable BookKey book, List<ScoreSpan> wanted) {
			List<ScoreSpan> added = new ArrayList<>(wanted);
			List<ScoreRow> withdrawn = new ArrayList<>();
			List<Closing> closed = new ArrayList<>();
			for (ScoreRow row : live) {
				ScoreSpan match = row.book().equals(book) ? match(row, added) : null;
				if (match == null) {
					withdrawn.add(row);
					continue;
				}
				added.remove(match);
				if (!match.equals(row.span())) {
					closed.add(new Closing(row, match));
				}
			}
			return new Difference(book, live, withdrawn, closed, added);
		}

		private static @Nullable ScoreSpan match(ScoreRow row, List<ScoreSpan> wanted) {
			return wanted.stream()
				.filter((span) -> span.scored().equals(row.scored()) && span.from().equals(row.from()))
				.filter((span) -> row.open() || span.equals(row.span()))
				.findFirst()
				.orElse(null);
		}

		/**
		 * The books that have or get a row of the tree.
		 */
		Set<BookKey> books() {
			Set<BookKey> books = new HashSet<>();
			this.live.forEach((row) -> books.add(row.book()));
			if (this.book != null && !(this.live.isEmpty() && this.added.isEmpty())) {
				books.add(this.book);
			}
			return books;
		}

		/**
		 * Whether there is nothing to write.
		 */
		boolean none() {
			return this.withdrawn.isEmpty() && this.closed.isEmpty() && this.added.isEmpty();
		}

		/**
		 * By how many trees the ranking of a book grows.
		 */
		int treesAdded(BookKey key) {
			long before = this.live.stream().filter(ScoreRow::open).filter((row) -> row.book().equals(key)).count();
			boolean after = Objects.equals(key, this.book) && openAfter();
			return (after ? 1 : 0) - (int) before;
		}

		private boolean openAfter() {
			return this.added.stream().anyMatch((span) -> span.until() == null) || this.live.stream()
				.filter(ScoreRow::open)
				.anyMatch((row) -> !this.withdrawn.contains(row)
						&& this.closed.stream().noneMatch((closing) -> closing.row().equals(row)));
		}

	}

	/**
	 * An open row and the span that it turned out to be.
	 */
	record Closing(ScoreRow row, ScoreSpan span) {
	}

}

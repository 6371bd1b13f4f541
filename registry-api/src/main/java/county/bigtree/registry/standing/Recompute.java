package county.bigtree.registry.standing;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;

import county.bigtree.domain.standing.TitleReason;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.journal.RegisterClock;
import org.springframework.dao.ConcurrencyFailureException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Puts scores and books in order where they differ from what the facts give now. What was
 * answered before stays as it was recorded; what is put right is a change of its own in
 * the journal. A register that is in order gets no change.
 */
@Service
public class Recompute {

	private static final int SLICE = 500;

	private final TreeScores scores;

	private final Standings standings;

	private final Books books;

	private final Journal journal;

	private final RegisterClock clock;

	private final JdbcClient jdbc;

	Recompute(TreeScores scores, Standings standings, Books books, Journal journal, RegisterClock clock,
			JdbcClient jdbc) {
		this.scores = scores;
		this.standings = standings;
		this.books = books;
		this.journal = journal;
		this.clock = clock;
		this.jdbc = jdbc;
	}

	/**
	 * The next trees after the given one, in the order of their ids; empty at the end.
	 */
	public List<UUID> treesAfter(UUID tree) {
		return this.jdbc.sql("select id from tree where id > ? order by id limit ?")
			.params(tree, SLICE)
			.query(UUID.class)
			.list();
	}

	/**
	 * The counties of the register.
	 */
	public List<String> counties() {
		return this.jdbc.sql("select key from county order by key").query(String.class).list();
	}

	/**
	 * The books of a county.
	 */
	public List<BookKey> books(String county) {
		return this.books.all(county);
	}

	/**
	 * Puts a tree's scores in order, with the titles of the books that this touches.
	 * @return whether anything was out of order
	 */
	@Transactional
	public boolean tree(UUID tree) {
		TreeScores.Difference seen = this.scores.difference(tree);
		if (seen.none()) {
			return false;
		}
		Set<String> counties = seen.books()
			.stream()
			.map(BookKey::county)
			.collect(Collectors.toCollection(TreeSet::new));
		Change change = this.journal.open(counties.iterator().next(), counties);
		if (!this.scores.difference(tree).equals(seen)) {
			throw new ConcurrencyFailureException("Somebody else changed tree " + tree + " meanwhile: start again");
		}
		this.standings.refresh(change, tree, TitleReason.RECOMPUTED);
		this.journal.close(change, Mended.KIND, null);
		return true;
	}

	/**
	 * Puts a book's titles, count and days in order, once its scores are.
	 * @return whether anything was out of order
	 */
	@Transactional
	public boolean book(BookKey book) {
		this.journal.lock(book.county());
		this.standings.catchUp(book, this.clock.now());
		if (this.standings.inOrder(book, this.clock.now())) {
			return false;
		}
		Change change = this.journal.open(book.county());
		this.standings.restore(change, book);
		this.journal.close(change, Mended.KIND, null);
		return true;
	}

}

package county.bigtree.registry.standing;

import java.time.Instant;

import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.journal.RegisterClock;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Lets time do what is due before somebody looks.
 */
@Service
public class CatchUp {

	private final Books books;

	private final Standings standings;

	private final Journal journal;

	private final RegisterClock clock;

	CatchUp(Books books, Standings standings, Journal journal, RegisterClock clock) {
		this.books = books;
		this.standings = standings;
		this.journal = journal;
		this.clock = clock;
	}

	/**
	 * Brings all books of a county up to the present instant. Takes the county's head
	 * only if something is due.
	 */
	@Transactional
	public void county(String county) {
		Instant now = this.clock.now();
		if (this.books.due(county, now).isEmpty()) {
			return;
		}
		this.journal.lock(county);
		this.books.due(county, now).forEach((book) -> this.standings.catchUp(book, now));
	}

}

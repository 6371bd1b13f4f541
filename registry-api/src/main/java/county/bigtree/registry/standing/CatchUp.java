package county.bigtree.registry.standing;

import java.time.Instant;

import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.journal.RegisterClock;
import org.springframework.dao.ConcurrencyFailureException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Lets time do what is due before somebody looks.
 */
@Service
public class CatchUp {

	private static final int TRIES = 3;

	private final Books books;

	private final Standings standings;

	private final Journal journal;

	private final RegisterClock clock;

	private final TransactionTemplate transaction;

	CatchUp(Books books, Standings standings, Journal journal, RegisterClock clock,
			PlatformTransactionManager transactions) {
		this.books = books;
		this.standings = standings;
		this.journal = journal;
		this.clock = clock;
		this.transaction = new TransactionTemplate(transactions);
	}

	/**
	 * Brings all books of a county up to the present instant. Takes the county's head
	 * only if something is due, and tries again where others write there.
	 */
	public void county(String county) {
		if (!this.books.anyDue(county, this.clock)) {
			return;
		}
		boolean within = TransactionSynchronizationManager.isActualTransactionActive();
		for (int attempt = 1;; attempt++) {
			try {
				this.transaction.executeWithoutResult((status) -> catchUp(county));
				return;
			}
			catch (ConcurrencyFailureException ex) {
				if (within || attempt == TRIES) {
					throw ex;
				}
			}
		}
	}

	private void catchUp(String county) {
		Instant now = this.clock.now();
		if (this.books.due(county, now).isEmpty()) {
			return;
		}
		this.journal.lock(county);
		this.books.due(county, now).forEach((book) -> this.standings.catchUp(book, now));
	}

}

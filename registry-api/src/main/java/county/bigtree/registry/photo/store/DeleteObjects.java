package county.bigtree.registry.photo.store;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;

import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Deletes the objects that no picture names, one a transaction, by one node at a time. An
 * archive that is being written reads pictures as they stood at its instant: none is
 * deleted meanwhile. Where the store is away they wait.
 */
@Component
@ConditionalOnProperty("registry.photos.store.bucket")
class DeleteObjects {

	private static final Logger logger = LoggerFactory.getLogger(DeleteObjects.class);

	private static final int BATCH = 500;

	private static final Duration LONGEST_RUN = Duration.ofSeconds(20);

	private static final Duration LONGEST_WAIT = Duration.ofMinutes(10);

	private final ObjectStore store;

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	private final TransactionTemplate transaction;

	DeleteObjects(ObjectStore store, JdbcClient jdbc, RegisterClock clock, PlatformTransactionManager transactions) {
		this.store = store;
		this.jdbc = jdbc;
		this.clock = clock;
		this.transaction = new TransactionTemplate(transactions);
	}

	@Scheduled(initialDelay = 15, fixedDelay = 15, timeUnit = TimeUnit.SECONDS)
	void byTheClock() {
		try {
			run();
		}
		catch (DataAccessException ex) {
			logger.warn("Objects to be deleted wait for the database: {}", ex.getClass().getSimpleName());
		}
	}

	/**
	 * Deletes what is due.
	 * @return how many were deleted
	 */
	int run() {
		Instant end = Instant.now().plus(LONGEST_RUN);
		int deleted = 0;
		while (deleted < BATCH && Instant.now().isBefore(end) && one()) {
			deleted++;
		}
		return deleted;
	}

	private boolean one() {
		AtomicReference<@Nullable Due> taken = new AtomicReference<>();
		try {
			return Boolean.TRUE.equals(this.transaction.execute((status) -> {
				taken.set(take().orElse(null));
				Due due = taken.get();
				if (due == null) {
					return false;
				}
				this.store.delete(due.object());
				this.jdbc.sql("delete from unnamed_object where object = ?").param(due.object()).update();
				return true;
			}));
		}
		catch (StoreAway ex) {
			Due due = taken.get();
			if (due != null) {
				postpone(due, ex);
			}
			return false;
		}
	}

	private Optional<Due> take() {
		if (!PicturesInUse.mayDelete(this.jdbc)) {
			return Optional.empty();
		}
		return this.jdbc.sql("""
				select object, tries from unnamed_object where due_at <= ? order by due_at limit 1
				for update skip locked""").param(SqlTime.of(this.clock.now())).query(Due.class).optional();
	}

	private void postpone(Due due, StoreAway failure) {
		logger.warn("An object could not be deleted, try {}: {}", due.tries() + 1, failure.getMessage());
		Duration doubled = Duration.ofSeconds(15L << Math.min(due.tries(), 10));
		Duration wait = (doubled.compareTo(LONGEST_WAIT) < 0) ? doubled : LONGEST_WAIT;
		this.transaction.executeWithoutResult(
				(status) -> this.jdbc.sql("update unnamed_object set due_at = ?, tries = tries + 1 where object = ?")
					.params(SqlTime.of(this.clock.now().plus(wait)), due.object())
					.update());
	}

	/** An object whose time has come. */
	private record Due(String object, int tries) {
	}

}

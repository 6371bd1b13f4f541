package county.bigtree.registry.notice;

import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.atomic.AtomicReference;

import county.bigtree.registry.journal.RegisterClock;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.stereotype.Service;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Sends what waits, one notice a transaction: at least once. A node that dies after the
 * mail server took a mail and before that is noted leaves it to be sent again, with the
 * same Message-ID. A failure puts the notice off and ends the run: it is mostly the
 * server's, and the next run tries the next one.
 */
@Service
class SendNotices {

	private static final Logger logger = LoggerFactory.getLogger(SendNotices.class);

	/**
	 * A run takes no more than so many mails, and no longer than about a batch's time.
	 */
	static final int BATCH = 200;

	private static final Duration LONGEST_RUN = Duration.ofSeconds(20);

	private final Mailing mailing;

	private final Outbox outbox;

	private final WriteLetter write;

	private final RegisterClock clock;

	private final TransactionTemplate transaction;

	SendNotices(Mailing mailing, Outbox outbox, WriteLetter write, RegisterClock clock,
			PlatformTransactionManager transactions) {
		this.mailing = mailing;
		this.outbox = outbox;
		this.write = write;
		this.clock = clock;
		this.transaction = new TransactionTemplate(transactions);
	}

	/**
	 * Sends what is due.
	 * @return how many were sent
	 */
	int run() {
		Instant end = Instant.now().plus(LONGEST_RUN);
		int sent = 0;
		for (int taken = 0; taken < BATCH && this.mailing.isOn() && Instant.now().isBefore(end); taken++) {
			Done done = one();
			if (done == Done.NOTHING_WAITS || done == Done.FAILED) {
				return sent;
			}
			sent += (done == Done.SENT) ? 1 : 0;
		}
		return sent;
	}

	private Done one() {
		AtomicReference<Outbox.@Nullable Taken> taken = new AtomicReference<>();
		try {
			Done done = this.transaction.execute((status) -> {
				Outbox.Taken one = this.outbox.take(this.clock.now()).orElse(null);
				taken.set(one);
				return (one != null) ? deal(one) : Done.NOTHING_WAITS;
			});
			return (done != null) ? done : Done.NOTHING_WAITS;
		}
		catch (RuntimeException ex) {
			Outbox.Taken failed = taken.get();
			if (failed == null) {
				throw ex;
			}
			noteFailure(failed, ex);
			return Done.FAILED;
		}
	}

	private Done deal(Outbox.Taken taken) {
		Instant now = this.clock.now();
		if (taken.isForPagesOnly()) {
			this.outbox.drop(taken.id());
			return Done.PUT_ASIDE;
		}
		if (taken.full()) {
			this.outbox.postpone(taken.id(), now.plus(Duration.ofHours(1)));
			return Done.PUT_ASIDE;
		}
		this.mailing.send(this.write.letter(taken, this.mailing), now);
		this.outbox.sent(taken.id(), now);
		return Done.SENT;
	}

	/** What the server said may name addresses, and stands in no log. */
	private void noteFailure(Outbox.Taken taken, RuntimeException failure) {
		Throwable root = failure;
		for (Throwable cause = failure.getCause(); cause != null && root != cause; cause = cause.getCause()) {
			root = cause;
		}
		String error = failure.getClass().getSimpleName() + ", " + root.getClass().getSimpleName();
		logger.warn("Notice {} could not be sent, try {}: {}", taken.id(), taken.tries() + 1, error);
		this.transaction.executeWithoutResult((status) -> this.outbox.failed(taken, this.clock.now(), error));
	}

	/** What became of a turn. */
	private enum Done {

		SENT, PUT_ASIDE, FAILED, NOTHING_WAITS

	}

}

package county.bigtree.registry.audit;

import java.util.List;
import java.util.OptionalLong;
import java.util.Queue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Looks whether the register is whole: every check, on one snapshot of the database.
 * Changes nothing, and may be done while others go on changing it. Two checks look at a
 * time, each on a connection of its own, and are told of one after the other, in their
 * order.
 */
@Service
public class VerifyRegister {

	private static final int AT_A_TIME = 2;

	private final List<RegisterCheck> checks;

	private final JdbcClient jdbc;

	private final TransactionTemplate transaction;

	VerifyRegister(List<RegisterCheck> checks, JdbcClient jdbc, PlatformTransactionManager transactions) {
		this.checks = checks;
		this.jdbc = jdbc;
		this.transaction = new TransactionTemplate(transactions);
		this.transaction.setIsolationLevel(TransactionDefinition.ISOLATION_REPEATABLE_READ);
		this.transaction.setReadOnly(true);
	}

	/**
	 * Looks at all of it.
	 * @return how much is wrong
	 * @throws RuntimeException what kept a check from being finished; none is running any
	 * more then
	 */
	public long look(Listener listener) {
		List<CheckRun> runs = this.checks.stream().map((check) -> new CheckRun(check, listener)).toList();
		Queue<CheckRun> waiting = new ConcurrentLinkedQueue<>(runs);
		Sharing sharing = new Sharing();
		ExecutorService threads = Executors.newFixedThreadPool(AT_A_TIME, (work) -> new Thread(work, "verify"));
		List<CompletableFuture<Void>> ends = List
			.of(CompletableFuture.runAsync(() -> this.transaction.executeWithoutResult((status) -> {
				sharing.snapshot.complete(exportSnapshot());
				sharing.taken.join();
				lookAtThose(waiting);
			}), threads), CompletableFuture.runAsync(() -> {
				String snapshot = sharing.snapshot.join();
				this.transaction.executeWithoutResult((status) -> {
					importSnapshot(snapshot);
					sharing.taken.complete(true);
					lookAtThose(waiting);
				});
			}, threads));
		ends.forEach((end) -> end.exceptionally((ex) -> {
			Throwable why = (ex.getCause() != null) ? ex.getCause() : ex;
			waiting.clear();
			sharing.stop(why);
			runs.forEach((run) -> run.stop(why));
			return null;
		}));
		try {
			return runs.stream().mapToLong(CheckRun::tell).sum();
		}
		finally {
			waiting.clear();
			runs.forEach((run) -> run.stop(new IllegalStateException("No longer told")));
			ends.forEach((end) -> end.handle((nothing, ex) -> true).join());
			threads.shutdown();
		}
	}

	private void lookAtThose(Queue<CheckRun> waiting) {
		prepareForLongQueries();
		for (CheckRun run = waiting.poll(); run != null; run = waiting.poll()) {
			run.look();
		}
	}

	private String exportSnapshot() {
		return this.jdbc.sql("select pg_export_snapshot()").query(String.class).single();
	}

	private void importSnapshot(String snapshot) {
		this.jdbc.sql("set transaction snapshot '" + snapshot + "'").update();
	}

	/**
	 * The checks sort and join whole tables, each once: there is memory for that, and
	 * compiling such a query, or starting helpers for each of many short ones, takes
	 * longer than it saves.
	 */
	private void prepareForLongQueries() {
		this.jdbc.sql("""
				select set_config('work_mem', '64MB', true), set_config('jit', 'off', true),
				  set_config('max_parallel_workers_per_gather', '0', true)""")
			.query((row, number) -> row.getString(1))
			.single();
	}

	/**
	 * Hears how far it is: by one thread at a time, though not always the same.
	 */
	public interface Listener {

		/** How much is told of what each check finds. */
		int told();

		/**
		 * A check begins to be told of that looks at so many things, where it is known.
		 */
		void begin(RegisterCheck check, OptionalLong expected);

		/** It found this, a sentence. */
		void found(RegisterCheck check, String sentence);

		/** It has looked at so many. */
		void looked(long count);

		/** It ended, after so many nanoseconds. */
		void end(RegisterCheck check, Findings findings, long nanos);

	}

	/**
	 * What one transaction shows, handed to another: the first ends only after the other
	 * has taken it.
	 */
	private static final class Sharing {

		private final CompletableFuture<String> snapshot = new CompletableFuture<>();

		private final CompletableFuture<Boolean> taken = new CompletableFuture<>();

		void stop(Throwable why) {
			this.snapshot.completeExceptionally(why);
			this.taken.completeExceptionally(why);
		}

	}

}

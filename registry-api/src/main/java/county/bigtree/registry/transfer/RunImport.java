package county.bigtree.registry.transfer;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

import county.bigtree.registry.problem.Contention;
import county.bigtree.registry.species.SpeciesCatalogue;
import jakarta.annotation.PreDestroy;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Component;
import org.springframework.transaction.event.TransactionalEventListener;

/**
 * Runs imports in the background, one after the other. An import that the service left
 * unfinished begins again from its first row when the service starts: what is on the
 * books already is passed over.
 */
@Component
class RunImport {

	private static final Logger logger = LoggerFactory.getLogger(RunImport.class);

	private static final int TRIES = 5;

	private final ImportJobs jobs;

	private final RecordSlice slices;

	private final SpeciesCatalogue catalogue;

	private final FollowUps followUps;

	private final ExecutorService worker = Executors.newSingleThreadExecutor((work) -> new Thread(work, "imports"));

	private volatile boolean stopping;

	RunImport(ImportJobs jobs, RecordSlice slices, SpeciesCatalogue catalogue, FollowUps followUps) {
		this.jobs = jobs;
		this.slices = slices;
		this.catalogue = catalogue;
		this.followUps = followUps;
	}

	@TransactionalEventListener
	void queued(StartImport.Queued queued) {
		this.worker.execute(() -> run(queued.id()));
	}

	/** Takes up again what the service left unfinished. */
	void goOn() {
		this.jobs.unfinished().forEach((id) -> this.worker.execute(() -> run(id)));
	}

	@PreDestroy
	void stop() throws InterruptedException {
		this.stopping = true;
		this.worker.shutdown();
		if (!this.worker.awaitTermination(20, TimeUnit.SECONDS)) {
			logger.warn("An import did not come to the end of its slice; it goes on at the next start");
		}
	}

	/**
	 * Works an import through on this very thread, unless it is finished.
	 */
	void run(UUID id) {
		if (this.stopping) {
			return;
		}
		try {
			this.jobs.find(id).filter(ImportJob::unfinished).ifPresent(this::run);
			this.jobs.find(id)
				.filter((job) -> !job.unfinished())
				.ifPresent((job) -> this.followUps.run(job, () -> this.stopping));
		}
		catch (RuntimeException ex) {
			logger.error("The state of import {} can't be kept; it goes on at the next start", id, ex);
		}
	}

	private void run(ImportJob job) {
		try {
			if (workThrough(job)) {
				this.jobs.finish(job.id(), null);
			}
		}
		catch (RuntimeException ex) {
			if (this.stopping) {
				return;
			}
			UUID incident = UUID.randomUUID();
			logger.error("Incident {} in import {}", incident, job.id(), ex);
			this.jobs.finish(job.id(), "Something went wrong on the register's side (incident " + incident
					+ "). The rows counted as accepted are on the books; send the same file again for the others.");
		}
	}

	/** Whether it came to the end of the file. */
	private boolean workThrough(ImportJob job) {
		ImportJobs.Sent sent = this.jobs.sent(job.id());
		TableFile file = TableFile.of(sent.file());
		ImportPlan plan = this.jobs.plan(job.id());
		Slicing slicing = new Slicing(job, plan, this.jobs.reader(job, plan, this.catalogue));
		file.forEach(slicing::add);
		slicing.record();
		return !this.stopping;
	}

	/** Tries a slice again where others were in its way. */
	static <T> T tryRepeatedly(Supplier<T> slice) {
		for (int attempt = 1;; attempt++) {
			try {
				return slice.get();
			}
			catch (RuntimeException ex) {
				// Another county may have taken a tag between the look and the writing.
				if (attempt == TRIES || !(Contention.caused(ex) || ex instanceof DuplicateKeyException)) {
					throw ex;
				}
			}
		}
	}

	/**
	 * Collects rows to slices, each about as large as {@link #AIM} allows: a slice holds
	 * the county's head, and others wait for it.
	 */
	private final class Slicing {

		private static final Duration AIM = Duration.ofMillis(200);

		private static final int MOST_ROWS = 500;

		private final ImportJob job;

		private final ImportPlan plan;

		private final RowReader reader;

		private final List<FileRow> rows = new ArrayList<>();

		private int size = 10;

		private ImportJob.Counts counts = ImportJob.Counts.NONE;

		Slicing(ImportJob job, ImportPlan plan, RowReader reader) {
			this.job = job;
			this.plan = plan;
			this.reader = reader;
		}

		void add(TableFile.Row row) {
			if (!RunImport.this.stopping) {
				this.rows.add(this.reader.read(row));
				if (this.rows.size() >= this.size) {
					record();
				}
			}
		}

		void record() {
			if (RunImport.this.stopping) {
				return;
			}
			long start = System.nanoTime();
			this.counts = tryRepeatedly(
					() -> RunImport.this.slices.record(this.job, this.plan, List.copyOf(this.rows), this.counts));
			long took = Math.max(1, System.nanoTime() - start);
			logger.debug("A slice of {} rows of import {} took {} ms", this.rows.size(), this.job.id(),
					TimeUnit.NANOSECONDS.toMillis(took));
			// At most twice as large at once: the first slices run before the code is
			// warm.
			double fitting = this.rows.size() * (double) AIM.toNanos() / took;
			this.size = (int) Math.max(1, Math.min(MOST_ROWS, Math.min(2.0 * this.size, fitting)));
			this.rows.clear();
		}

	}

}

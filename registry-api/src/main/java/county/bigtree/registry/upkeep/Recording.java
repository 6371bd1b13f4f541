package county.bigtree.registry.upkeep;

import java.io.IOException;
import java.time.Instant;
import java.time.LocalDate;

import county.bigtree.registry.archive.UnusableArchive;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.stereotype.Component;

/**
 * Does a run once for its day, notes how it ended, and says so where it did not end well.
 */
@Component
class Recording {

	private static final Logger logger = LoggerFactory.getLogger(Recording.class);

	private final UpkeepRuns runs;

	private final Troubles troubles;

	Recording(UpkeepRuns runs, Troubles troubles) {
		this.runs = runs;
		this.troubles = troubles;
	}

	/**
	 * Does the work, if no node did it for that day.
	 * @param trouble what it is where the work fails
	 */
	void run(String kind, LocalDate dueOn, TroubleKind trouble, Work work) {
		this.runs.begin(kind, dueOn).ifPresent((began) -> note(kind, dueOn, trouble, done(kind, dueOn, work, began)));
	}

	private static Ended done(String kind, LocalDate dueOn, Work work, Instant began) {
		try {
			return work.run(began);
		}
		catch (InterruptedException ex) {
			Thread.currentThread().interrupt();
			return Ended.failed("The service was stopped meanwhile.");
		}
		catch (IOException | RuntimeException ex) {
			logger.error("The run {} for {} failed", kind, dueOn, ex);
			return Ended.failed(reason(ex));
		}
	}

	/** What is no sentence for people says at least of what kind it is. */
	private static String reason(Exception failure) {
		return (failure instanceof UnusableArchive) ? String.valueOf(failure.getMessage())
				: failure.getClass().getSimpleName() + ": " + failure.getMessage();
	}

	private void note(String kind, LocalDate dueOn, TroubleKind trouble, Ended ended) {
		this.runs.end(kind, dueOn, ended.outcome(), ended.detail(), ended.bytes());
		if (UpkeepRun.FAILED.equals(ended.outcome())) {
			this.troubles.found(trouble, "", ended.detail());
		}
		else {
			this.troubles.mended(trouble, "");
			logger.info("The run {} for {} ended {}: {}", kind, dueOn, ended.outcome(), ended.detail());
		}
	}

	/** Notes that something is wrong. */
	void found(TroubleKind kind, @Nullable String detail) {
		this.troubles.found(kind, "", detail);
	}

	/** Notes that something is not wrong. */
	void mended(TroubleKind kind) {
		this.troubles.mended(kind, "");
	}

	/**
	 * What is done.
	 */
	@FunctionalInterface
	interface Work {

		/** Does it, from that instant on, and says how it ended. */
		Ended run(Instant began) throws IOException, InterruptedException;

	}

	/**
	 * How a run ended.
	 */
	record Ended(String outcome, @Nullable String detail, @Nullable Long bytes) {

		static Ended well(String detail, @Nullable Long bytes) {
			return new Ended(UpkeepRun.WELL, detail, bytes);
		}

		static Ended notWell(String detail) {
			return new Ended(UpkeepRun.NOT_WELL, detail, null);
		}

		static Ended failed(String detail) {
			return new Ended(UpkeepRun.FAILED, detail, null);
		}

	}

}

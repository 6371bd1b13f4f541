package county.bigtree.registry.upkeep;

import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;

import county.bigtree.registry.journal.RegisterClock;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.beans.factory.DisposableBean;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.dao.DataAccessException;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;

/**
 * What every node does by the clock to keep the register safe. The long runs have a
 * thread of their own, so that nothing else that is done by the clock waits for them.
 */
@Component
@ConditionalOnProperty(name = "registry.upkeep.on", matchIfMissing = true)
class UpkeepSchedule implements DisposableBean {

	private static final Logger logger = LoggerFactory.getLogger(UpkeepSchedule.class);

	private final WatchOver watch;

	private final DaysWork work;

	private final UpkeepSettings settings;

	private final RegisterClock clock;

	private final ExecutorService thread = Executors.newSingleThreadExecutor((task) -> {
		Thread made = new Thread(task, "upkeep");
		made.setDaemon(true);
		return made;
	});

	private final AtomicBoolean busy = new AtomicBoolean();

	UpkeepSchedule(WatchOver watch, DaysWork work, UpkeepSettings settings, RegisterClock clock) {
		this.watch = watch;
		this.work = work;
		this.settings = settings;
		this.clock = clock;
	}

	@Scheduled(initialDelay = 2, fixedDelay = 5, timeUnit = TimeUnit.MINUTES)
	void watch() {
		try {
			this.watch.look(this.clock.now());
		}
		catch (DataAccessException ex) {
			logger.warn("Nothing is watched without the database: {}", ex.getClass().getSimpleName());
		}
	}

	/** Ten minutes after the start, too: some machines are switched off each evening. */
	@Scheduled(initialDelay = 10, fixedDelay = 30, timeUnit = TimeUnit.MINUTES)
	void work() {
		if (this.busy.compareAndSet(false, true)) {
			this.thread.execute(() -> {
				try {
					this.work.run(this.clock.now(), this.settings.hour());
				}
				catch (RuntimeException ex) {
					logger.error("The day's work could not be done", ex);
				}
				finally {
					this.busy.set(false);
				}
			});
		}
	}

	@Override
	public void destroy() {
		this.thread.shutdownNow();
	}

}

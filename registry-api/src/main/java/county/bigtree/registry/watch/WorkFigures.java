package county.bigtree.registry.watch;

import java.util.concurrent.TimeUnit;
import java.util.function.ToDoubleFunction;

import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.dao.DataAccessException;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;

/**
 * The open work as gauges, counted once a minute and not whenever somebody looks. Not a
 * number where it could not be counted.
 */
@Component
@ConditionalOnProperty(name = "registry.watch.count-work", matchIfMissing = true)
class WorkFigures {

	private static final Logger logger = LoggerFactory.getLogger(WorkFigures.class);

	private final CountWork count;

	private volatile @Nullable Work work;

	WorkFigures(CountWork count, MeterRegistry meters) {
		this.count = count;
		gauge(meters, "registry.queue.waiting", "What waits for a coordinator", null, Work::waiting);
		gauge(meters, "registry.queue.oldest", "How long the oldest of it has waited", "seconds", Work::oldestSeconds);
		gauge(meters, "registry.due", "Trees that are due to be measured again", null, Work::due);
		gauge(meters, "registry.notices.stuck", "Mails that can't be sent", null, Work::stuckNotices);
		gauge(meters, "registry.archive.age", "Since an archive was taken", "seconds", Work::archiveSeconds);
		gauge(meters, "registry.verify.age", "Since the register was found whole", "seconds", Work::verifySeconds);
		gauge(meters, "registry.trial.age", "Since an archive was restored on trial", "seconds", Work::trialSeconds);
	}

	@Scheduled(initialDelay = 20, fixedDelay = 60, timeUnit = TimeUnit.SECONDS)
	void refresh() {
		try {
			this.work = this.count.count();
		}
		catch (DataAccessException ex) {
			this.work = null;
			logger.warn("The open work could not be counted", ex);
		}
	}

	private void gauge(MeterRegistry meters, String name, String description, @Nullable String unit,
			ToDoubleFunction<Work> figure) {
		Gauge.builder(name, () -> {
			Work now = this.work;
			return (now != null) ? figure.applyAsDouble(now) : Double.NaN;
		}).description(description).baseUnit(unit).register(meters);
	}

}

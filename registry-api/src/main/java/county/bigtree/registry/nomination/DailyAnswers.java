package county.bigtree.registry.nomination;

import java.util.UUID;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Service;

/**
 * Once a day looks after the returned nominations of all counties. Every node begins it;
 * one that fails on a nomination goes on with the next.
 */
@Service
public class DailyAnswers {

	private static final Logger logger = LoggerFactory.getLogger(DailyAnswers.class);

	private final AwaitAnswers answers;

	DailyAnswers(AwaitAnswers answers) {
		this.answers = answers;
	}

	@Scheduled(cron = "0 13 3 * * *", zone = "UTC")
	public void run() {
		for (UUID nomination : this.answers.returned()) {
			try {
				AwaitAnswers.Done done = this.answers.await(nomination);
				if (done != null) {
					logger.info("Nomination {}: {}", nomination, done);
				}
			}
			catch (RuntimeException ex) {
				logger.error("The daily run failed at nomination {}", nomination, ex);
			}
		}
	}

}

package county.bigtree.registry.http;

import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Once a day, on whichever node: forgets the keys of requests that are too old.
 */
@Component
class ForgetOldKeys {

	private final KeyedAnswers answers;

	ForgetOldKeys(KeyedAnswers answers) {
		this.answers = answers;
	}

	@Scheduled(cron = "0 17 3 * * *", zone = "UTC")
	@Transactional
	int forget() {
		return this.answers.forgetOld();
	}

}

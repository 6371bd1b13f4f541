package county.bigtree.registry.upkeep;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;

import org.springframework.stereotype.Component;

/**
 * What is done once a day, once a week and once a month, by whichever node comes first.
 */
@Component
class DaysWork {

	private final TakeArchive archive;

	private final LookWhole verify;

	private final TryRestore trial;

	private final WeeklyWord weekly;

	DaysWork(TakeArchive archive, LookWhole verify, TryRestore trial, WeeklyWord weekly) {
		this.archive = archive;
		this.verify = verify;
		this.trial = trial;
		this.weekly = weekly;
	}

	/**
	 * Does what was not done yet.
	 * @param hour of the day (UTC) from which on the day's work is done
	 */
	void run(Instant now, int hour) {
		LocalDate day = LocalDate.ofInstant(now, ZoneOffset.UTC);
		if (now.atZone(ZoneOffset.UTC).getHour() >= hour) {
			this.archive.run(day);
			this.verify.run(day);
			this.trial.run(day.withDayOfMonth(1));
		}
		this.weekly.say(now);
	}

}

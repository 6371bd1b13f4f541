package county.bigtree.registry.upkeep;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.temporal.TemporalAdjusters;

import county.bigtree.registry.notice.NoticeKind;
import county.bigtree.registry.notice.TellAdministrators;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Says to the administrators once a week, on Monday from six in the morning (UTC) on,
 * that all is well, or what is not: who hears nothing knows that something is wrong with
 * the service itself.
 */
@Service
public class WeeklyWord {

	private static final int MORNING = 6;

	private final TellAdministrators tell;

	private final Troubles troubles;

	WeeklyWord(TellAdministrators tell, Troubles troubles) {
		this.tell = tell;
		this.troubles = troubles;
	}

	/** Says it, if it was not said yet. */
	@Transactional
	public int say(Instant now) {
		ZonedDateTime here = now.atZone(ZoneOffset.UTC);
		LocalDate monday = here.toLocalDate().with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
		if (here.isBefore(monday.atTime(MORNING, 0).atZone(ZoneOffset.UTC))) {
			return 0;
		}
		String word = this.troubles.open().isEmpty() ? UpkeepRun.WELL : UpkeepRun.NOT_WELL;
		return this.tell.queue(NoticeKind.UPKEEP_WEEK, "service:" + monday, word, now);
	}

}

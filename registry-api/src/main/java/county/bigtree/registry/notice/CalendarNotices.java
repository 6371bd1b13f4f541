package county.bigtree.registry.notice;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.temporal.TemporalAdjusters;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.standing.CatchUp;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Queues what the calendar brings: on Monday morning the week's digest, and once a month
 * to each who measured one of the first trees last that it is due. Run as often as one
 * likes, on any node, it queues each once.
 */
@Service
class CalendarNotices {

	/** Who may measure the tree again. */
	private static final String DUE = """
			select a.person as recipient, :in || ':' || :month as subject, a.county, null::uuid as tree,
			  '/counties/' || a.county as page, :month as detail
			from role_assignment a where a.county = :in and a.person in (:people) and a.from_at <= :instant
			  and (a.until_at is null or a.until_at > :instant)""";

	private final NoticeQueue queue;

	private final Gathering gathering;

	private final CatchUp catchUp;

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	CalendarNotices(NoticeQueue queue, Gathering gathering, CatchUp catchUp, JdbcClient jdbc, RegisterClock clock) {
		this.queue = queue;
		this.gathering = gathering;
		this.catchUp = catchUp;
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/**
	 * Queues what is to be told in a county by now.
	 * @return how many were new
	 */
	@Transactional
	public int queue(String county) {
		this.catchUp.county(county);
		ZoneId zone = ZoneId
			.of(this.jdbc.sql("select time_zone from county where key = ?").param(county).query(String.class).single());
		ZonedDateTime now = this.clock.now().atZone(zone);
		LocalDate monday = now.toLocalDate().with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
		ZonedDateTime morning = monday.atTime(QueueNotices.MORNING, 0).atZone(zone);
		int queued = now.isBefore(morning) ? 0 : digest(county, monday, morning.toInstant(), now.toInstant());
		return queued + due(county, YearMonth.from(now), now.toInstant());
	}

	/** To those who coordinated the county when the week ended. */
	private int digest(String county, LocalDate monday, Instant morning, Instant now) {
		return this.queue.put(NoticeKind.WEEKLY_DIGEST, Occasion.COORDINATORS,
				Map.of("in", county, "instant", SqlTime.of(morning), "day", monday.toString()), now);
	}

	private int due(String county, YearMonth month, Instant now) {
		Set<UUID> people = this.gathering.measurersOfDue(county);
		return people.isEmpty() ? 0 : this.queue.put(NoticeKind.REMEASUREMENT_DUE, DUE,
				Map.of("in", county, "instant", SqlTime.of(now), "month", month.toString(), "people", people), now);
	}

}

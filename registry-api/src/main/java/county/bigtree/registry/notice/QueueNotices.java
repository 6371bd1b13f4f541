package county.bigtree.registry.notice;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.ChangeWatcher;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Queues the notices of a change in its transaction, at its end, so that they are kept
 * exactly if its facts are.
 */
@Component
class QueueNotices implements ChangeWatcher {

	/** The hour of the day at which coordinators get what is told once a day. */
	static final int MORNING = 6;

	private final NoticeQueue queue;

	private final JdbcClient jdbc;

	QueueNotices(NoticeQueue queue, JdbcClient jdbc) {
		this.queue = queue;
		this.jdbc = jdbc;
	}

	@Override
	public void closed(Change change, String kind, @Nullable UUID actor) {
		change.counties().forEach((county) -> {
			List<Occasion> occasions = new ArrayList<>(Occasion.TITLES);
			Map<String, Object> here = at(county, change.recordedAt(), change.zone(county));
			if (county.equals(change.county())) {
				occasions.addAll(Occasion.of(kind));
				here.put("seq", change.seq());
			}
			this.queue.put(occasions, here, change.recordedAt(), actor);
		});
	}

	@Override
	public void caughtUp(String county, Instant at) {
		this.queue.put(Occasion.TITLES, at(county, at, zone(county)), at, null);
	}

	private static Map<String, Object> at(String county, Instant instant, ZoneId zone) {
		LocalDate day = LocalDate.ofInstant(instant, zone);
		return new HashMap<>(Map.of("in", county, "instant", SqlTime.of(instant), "day", day.toString(), "morning",
				SqlTime.of(day.plusDays(1).atTime(MORNING, 0).atZone(zone).toInstant())));
	}

	private ZoneId zone(String county) {
		return ZoneId
			.of(this.jdbc.sql("select time_zone from county where key = ?").param(county).query(String.class).single());
	}

}

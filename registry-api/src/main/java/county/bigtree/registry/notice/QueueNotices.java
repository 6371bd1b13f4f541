package county.bigtree.registry.notice;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;

import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.ChangeWatcher;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Queues the notices of a change in its transaction, at its end, so that they are kept
 * exactly if its facts are. Titles that turn are told to the coordinators once a day, in
 * the morning after: an import of thousands of trees makes one mail of them.
 */
@Component
class QueueNotices implements ChangeWatcher {

	/** The hour of the day at which coordinators get what is told once a day. */
	static final int MORNING = 6;

	private static final String TURNED = """
			select exists (select from title_span where county = :in and from_at = :instant)
			  or exists (select from title_span where county = :in and to_at = :instant)""";

	/** Who coordinates the county; the county and a day are the subject. */
	static final String COORDINATORS = """
			select a.person as recipient, :in || ':' || :day as subject, a.county, null::uuid as tree,
			  '/counties/' || a.county as page, :day as detail
			from role_assignment a where a.county = :in and a.role = 'coordinator' and a.from_at <= :instant
			  and (a.until_at is null or a.until_at > :instant)""";

	private final NoticeQueue queue;

	private final JdbcClient jdbc;

	QueueNotices(NoticeQueue queue, JdbcClient jdbc) {
		this.queue = queue;
		this.jdbc = jdbc;
	}

	@Override
	public void closed(Change change, String kind, @Nullable UUID actor) {
		Map<String, Object> here = Map.of("in", change.county(), "seq", change.seq());
		for (Occasion occasion : Occasion.of(kind)) {
			this.queue.put(occasion.kind(), occasion.query(), here, change.recordedAt(), change.recordedAt(),
					occasion.toActor() ? null : actor);
		}
		change.counties().forEach((county) -> titles(county, change.recordedAt(), () -> change.zone(county)));
	}

	@Override
	public void caughtUp(String county, Instant at) {
		titles(county, at, () -> zone(county));
	}

	private void titles(String county, Instant at, Supplier<ZoneId> in) {
		Map<String, Object> then = Map.of("in", county, "instant", SqlTime.of(at));
		if (!this.jdbc.sql(TURNED).params(then).query(Boolean.class).single()) {
			return;
		}
		ZoneId zone = in.get();
		this.queue.put(Occasion.TITLES, then, at, at, null);
		LocalDate day = LocalDate.ofInstant(at, zone);
		Instant morning = day.plusDays(1).atTime(MORNING, 0).atZone(zone).toInstant();
		this.queue.put(NoticeKind.TITLES_TURNED, COORDINATORS,
				Map.of("in", county, "instant", SqlTime.of(at), "day", day.toString()), at, morning, null);
	}

	private ZoneId zone(String county) {
		return ZoneId
			.of(this.jdbc.sql("select time_zone from county where key = ?").param(county).query(String.class).single());
	}

}

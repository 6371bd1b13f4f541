package county.bigtree.registry.notice;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collector;
import java.util.stream.Collectors;

import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Puts notices in, within the transaction of whoever calls: one a kind, subject and
 * recipient, whatever is put in twice. Only to accounts that are open. What happens in a
 * county for practice, in a story that is replayed, or is of a kind that the recipient
 * doesn't want by e-mail, stands on the pages only.
 */
@Component
class NoticeQueue {

	private static final String INSERT = """
			insert into notice (id, kind, subject, recipient, county, tree, page, detail, queued_at, mail, next_try_at)
			select gen_random_uuid(), q.kind, q.subject, q.recipient, q.county, q.tree, q.page, q.detail, :at,
			  case when :replayed or coalesce(c.practice, false)
			    or exists (select from notice_refusal r where r.person = q.recipient and r.kind = q.kind)
			    then 'none' else 'waiting' end, q.due
			from (%s) q join person p on p.id = q.recipient and p.active
			left join county c on c.key = q.county
			where q.to_actor or q.recipient is distinct from :actor
			on conflict (kind, subject, recipient) do nothing""";

	private static final Collector<CharSequence, ?, String> ALL = Collectors.joining(" union all ");

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	NoticeQueue(JdbcClient jdbc, RegisterClock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/**
	 * Puts in what the query finds, to be sent at once.
	 * @param at when it happened
	 * @return how many were new
	 */
	int put(NoticeKind kind, String query, Map<String, ?> parameters, Instant at) {
		return put(List.of(new Occasion(kind, query, true)), parameters, at, null);
	}

	/**
	 * Puts in what the queries of several occasions find.
	 * @param at when it happened
	 * @param actor who caused it, or null
	 * @return how many were new
	 */
	int put(List<Occasion> occasions, Map<String, ?> parameters, Instant at, @Nullable UUID actor) {
		return this.jdbc.sql(INSERT.formatted(occasions.stream().map(Occasion::asked).collect(ALL)))
			.params(parameters)
			.param("at", SqlTime.of(at))
			.param("replayed", this.clock.replayed().isPresent())
			.param("actor", actor, java.sql.Types.OTHER)
			.update();
	}

}

package county.bigtree.registry.pages.paper;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Which titles of a county began and ended within some time, by why.
 */
@Component
class TitleYear {

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	TitleYear(JdbcClient jdbc, RegisterClock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/**
	 * After one instant and up to another, the most frequent reason first.
	 */
	@Transactional(readOnly = true)
	public List<Reason> between(String county, Instant after, Instant until) {
		Map<String, List<Change>> byReason = new LinkedHashMap<>();
		this.jdbc
			.sql("""
					with turn as (
					  select id, from_at as at, began as why, true as began from title_span where county = :county
					    and from_at > :after and from_at <= :until
					  union all
					  select id, to_at, ended, false from title_span where county = :county and to_at > :after and to_at <= :until)
					select u.at, u.why, u.began, s.species, s.title, case when is_listed(t.id, :now) then t.tag end as tag
					from turn u join title_span s on s.id = u.id join tree t on t.id = s.tree
					order by u.at, s.species, u.began, t.tag""")
			.param("county", county)
			.param("after", SqlTime.of(after))
			.param("until", SqlTime.of(until))
			.param("now", SqlTime.of(this.clock.now()))
			.query((row) -> {
				byReason.computeIfAbsent(row.getString("why"), (why) -> new ArrayList<>())
					.add(new Change(SqlTime.get(row, "at"), row.getBoolean("began"), row.getString("species"),
							row.getString("title"), row.getString("tag")));
			});
		return byReason.entrySet()
			.stream()
			.map((one) -> new Reason(one.getKey(), one.getValue()))
			.sorted(Comparator.comparing((Reason reason) -> -reason.changes().size()).thenComparing(Reason::why))
			.toList();
	}

	/**
	 * Changes of one reason, in the order in which they were recognised.
	 */
	public record Reason(String why, List<Change> changes) {
	}

	/**
	 * A title that began or ended.
	 *
	 * @param tag null where the tree is not listed, at an owner's wish
	 */
	public record Change(Instant at, boolean began, String species, String title, @Nullable String tag) {
	}

}

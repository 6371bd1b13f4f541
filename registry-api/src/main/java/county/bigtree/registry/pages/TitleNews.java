package county.bigtree.registry.pages;

import java.time.Instant;
import java.util.List;

import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * The newest beginnings and ends of titles.
 */
@Component
class TitleNews {

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	TitleNews(JdbcClient jdbc, RegisterClock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/**
	 * Of one county, or of all that are not for practice, newest first.
	 */
	@Transactional(readOnly = true)
	public List<Change> latest(@Nullable String county, int limit) {
		return this.jdbc
			.sql("""
					with ranged as (select s.* from title_span s join county_now c on c.key = s.county
					  where not c.practice and (cast(:county as text) is null or s.county = :county)),
					news as ((select id, from_at as at, began as why, true as began from ranged order by from_at desc limit :limit)
					  union all
					  (select id, to_at, ended, false from ranged where to_at is not null order by to_at desc limit :limit))
					select n.at, n.why, n.began, s.county, c.name as county_name, c.time_zone, s.species, p.common_name, s.title,
					 case when is_listed(t.id, :now) then t.tag end as tag
					from news n join title_span s on s.id = n.id join county_now c on c.key = s.county
					join species p on p.key = s.species join tree t on t.id = s.tree
					order by n.at desc, n.began, t.tag limit :limit""")
			.param("county", county, java.sql.Types.VARCHAR)
			.param("limit", limit)
			.param("now", SqlTime.of(this.clock.now()))
			.query((row, number) -> new Change(SqlTime.get(row, "at"), row.getString("why"), row.getBoolean("began"),
					row.getString("county"), row.getString("county_name"), row.getString("time_zone"),
					row.getString("species"), row.getString("common_name"), row.getString("title"),
					row.getString("tag")))
			.list();
	}

	/**
	 * A title that began or ended.
	 *
	 * @param tag null where the tree is not listed, at an owner's wish
	 * @param why a reason of a title's beginning or end
	 */
	record Change(Instant at, String why, boolean began, String county, String countyName, String timeZone,
			String species, String commonName, String title, @Nullable String tag) {
	}

}

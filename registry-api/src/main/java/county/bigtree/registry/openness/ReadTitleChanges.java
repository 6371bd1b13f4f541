package county.bigtree.registry.openness;

import java.nio.charset.StandardCharsets;
import java.sql.Types;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Reads the beginnings and ends of titles, newest first, in counties that are not for
 * practice.
 */
@Service
public class ReadTitleChanges {

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	ReadTitleChanges(JdbcClient jdbc, RegisterClock clock) {
		this.jdbc = jdbc;
		this.clock = clock;
	}

	/**
	 * Of one county, or of all.
	 */
	@Transactional(readOnly = true)
	public List<Change> latest(@Nullable String county, int offset, int limit) {
		return this.jdbc
			.sql("""
					with ranged as (select s.* from title_span s join county c on c.key = s.county
					  where not c.practice and (cast(:county as text) is null or s.county = :county)),
					events as ((select id, from_at as at, true as began from ranged order by from_at desc, id desc limit :most)
					  union all
					  (select id, to_at, false from ranged where to_at is not null order by to_at desc, id desc limit :most))
					select e.at, e.began as has_begun, s.id, s.county, c.name as county_name, s.species, p.scientific_name,
					  p.common_name, s.tree, t.tag, s.title, s.from_at, s.to_at, s.points, s.measured_on, s.began, s.ended,
					  (select count(*) from title_span o where o.county = s.county and o.species = s.species
					    and o.from_at = s.from_at and o.id <= s.id) as number,
					  l.latitude, l.longitude, l.accuracy_metres, l.shown, w.*
					from events e join title_span s on s.id = e.id join county_now c on c.key = s.county
					join species p on p.key = s.species join tree t on t.id = s.tree
					join lateral (select * from location where tree = t.id order by recorded_at desc limit 1) l on true
					cross join lateral owners_consent(t.id, :now) w
					order by e.at desc, e.began desc, s.id desc limit :limit offset :offset""")
			.param("now", SqlTime.of(this.clock.now()))
			.param("county", county, Types.VARCHAR)
			.param("most", offset + limit)
			.param("limit", limit)
			.param("offset", offset)
			.query((row, number) -> new Change(SqlTime.get(row, "at"), row.getBoolean("has_begun"),
					ReadOpenTitles.title(row)))
			.list();
	}

	/**
	 * A title that began or ended.
	 */
	public record Change(Instant at, boolean began, OpenTitle title) {

		/** The same for ever, and of no other change. */
		public UUID id() {
			String name = this.title.id() + (this.began ? " began" : " ended");
			return UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8));
		}

		/** The word of the reason. */
		public String why() {
			String ended = this.title.ended();
			return (this.began || ended == null) ? this.title.began() : ended;
		}

	}

}

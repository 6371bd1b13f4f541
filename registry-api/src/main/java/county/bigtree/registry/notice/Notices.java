package county.bigtree.registry.notice;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.UUID;

import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Reads notices.
 */
@Component
class Notices {

	private static final String NOTICE = """
			select n.id, n.kind, n.subject, n.recipient, n.county, c.name as county_name, t.tag,
			  coalesce(s.common_name, s.scientific_name) as species, n.page, n.detail, n.queued_at, n.mail, n.tries, n.last_error
			from notice n left join county_now c on c.key = n.county left join tree t on t.id = n.tree
			left join lateral (select species from identification where tree = n.tree order by recorded_at desc limit 1) i on true
			left join species s on s.key = i.species
			""";

	private final JdbcClient jdbc;

	Notices(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	Notice get(UUID id) {
		return this.jdbc.sql(NOTICE + "where n.id = ?").param(id).query(Notices::notice).single();
	}

	/**
	 * Somebody's own, newest first.
	 * @param before the last one seen, or null to begin
	 */
	List<Notice> of(UUID recipient, @Nullable UUID before, int limit) {
		return this.jdbc
			.sql(NOTICE
					+ """
							where n.recipient = :recipient and (cast(:before as uuid) is null
							  or (n.queued_at, n.id) < (select queued_at, id from notice where id = :before and recipient = :recipient))
							order by n.queued_at desc, n.id desc limit :limit""")
			.param("recipient", recipient)
			.param("before", before, java.sql.Types.OTHER)
			.param("limit", limit)
			.query(Notices::notice)
			.list();
	}

	/**
	 * Those that could not be sent for some time, oldest first.
	 */
	List<Notice> stuck(int limit) {
		return this.jdbc.sql(NOTICE + "where " + Outbox.STUCK + " order by n.queued_at, n.id limit ?")
			.param(limit)
			.query(Notices::notice)
			.list();
	}

	private static Notice notice(ResultSet row, int number) throws SQLException {
		return new Notice(row.getObject("id", UUID.class), NoticeKind.find(row.getString("kind")).orElseThrow(),
				row.getString("subject"), row.getObject("recipient", UUID.class), row.getString("county"),
				row.getString("county_name"), row.getString("tag"), row.getString("species"), row.getString("page"),
				row.getString("detail"), SqlTime.get(row, "queued_at"), row.getString("mail"), row.getInt("tries"),
				row.getString("last_error"));
	}

}

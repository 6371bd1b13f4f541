package county.bigtree.registry.people;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * The words that a person wrote into the register and that are still there, newest first:
 * not what they recorded of owners or took in from older lists, which is not theirs.
 */
@Component
public class ListOwnWords {

	private final JdbcClient jdbc;

	ListOwnWords(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/** At most {@code limit} before the one named. */
	@Transactional(readOnly = true)
	public List<Written> list(Actor author, @Nullable UUID before, int limit) {
		return this.jdbc.sql("""
				select p.id, p.county, p.recorded_at, c.kind, b.body
				from change c join text_piece p on p.county = c.county and p.seq = c.seq join text_body b on b.id = p.id
				where c.actor = :author and p.id < :before
					and c.kind not in ('imported', 'owner-recorded', 'owner-ended', 'consent-recorded')
				 order by p.id desc limit :limit""")
			.param("author", author.id())
			.param("before", (before != null) ? before : new UUID(-1L, -1L))
			.param("limit", limit)
			.query((row, number) -> new Written(row.getObject("id", UUID.class), row.getString("county"),
					row.getObject("recorded_at", OffsetDateTime.class).toInstant(), row.getString("kind"),
					row.getString("body")))
			.list();
	}

	/**
	 * Some words.
	 *
	 * @param kind of the change with which they were written
	 */
	public record Written(UUID id, String county, Instant at, String kind, String words) {
	}

}

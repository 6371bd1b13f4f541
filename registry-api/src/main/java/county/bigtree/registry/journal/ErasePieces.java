package county.bigtree.registry.journal;

import java.util.Collection;
import java.util.List;
import java.util.UUID;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Erases single pieces of words for whom they concern, within a change that the caller
 * has begun and ends. Facts and journal keep the digests. It can't be undone.
 */
@Component
public class ErasePieces {

	private static final String GROUND = "asked-by-subject";

	private final JdbcClient jdbc;

	ErasePieces(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/** Whether the piece has not been erased yet. */
	public boolean isThere(UUID piece) {
		return this.jdbc.sql("select exists (select from text_body where id = ?)")
			.param(piece)
			.query(Boolean.class)
			.single();
	}

	/**
	 * Erases those of the pieces that are still there, and answers how many those were.
	 */
	public int erase(Change change, Collection<UUID> pieces, UUID by) {
		List<UUID> there = pieces.isEmpty() ? List.of()
				: this.jdbc.sql("select id from text_body where id in (:pieces) order by id")
					.param("pieces", pieces)
					.query(UUID.class)
					.list();
		for (UUID piece : there) {
			this.jdbc.sql("""
					insert into text_erasure (text, county, seq, recorded_at, by_person, ground)
					values (:text, :county, :seq, :at, :by, :ground)""")
				.param("text", piece)
				.param("county", change.county())
				.param("seq", change.seq())
				.param("at", SqlTime.of(change.recordedAt()))
				.param("by", by)
				.param("ground", GROUND)
				.update();
			this.jdbc.sql("delete from text_body where id = ?").param(piece).update();
		}
		change.wrote(FactTable.TEXT_ERASURE);
		return there.size();
	}

}

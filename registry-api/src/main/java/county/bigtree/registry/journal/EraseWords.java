package county.bigtree.registry.journal;

import java.util.List;
import java.util.UUID;

import county.bigtree.registry.people.AuthoredWords;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Erases people's words from beside the facts and the journal, which keep their digests,
 * and records of each piece that it was erased, by whom and why. It can't be undone. What
 * someone recorded of an owner or took in from an older list is not theirs.
 */
@Component
class EraseWords implements AuthoredWords {

	private final JdbcClient jdbc;

	private final Journal journal;

	EraseWords(JdbcClient jdbc, Journal journal) {
		this.jdbc = jdbc;
		this.journal = journal;
	}

	/** In each county one change. */
	@Override
	public void erase(UUID author, UUID by, String ground) {
		List<String> counties = this.jdbc
			.sql("""
					select distinct p.county from change c join text_piece p on p.county = c.county and p.seq = c.seq
					where c.actor = :author and c.kind not in ('imported', 'owner-recorded', 'owner-ended', 'consent-recorded')
						and exists (select from text_body where id = p.id) order by p.county""")
			.param("author", author)
			.query(String.class)
			.list();
		for (String county : counties) {
			Change change = this.journal.open(county);
			eraseIn(change, author, by, ground);
			this.journal.close(change, "words-erased", by);
		}
	}

	private void eraseIn(Change change, UUID author, UUID by, String ground) {
		this.jdbc
			.sql("""
					insert into text_erasure (text, county, seq, recorded_at, by_person, ground)
					select p.id, p.county, :seq, :at, :by, :ground
					from change c join text_piece p on p.county = c.county and p.seq = c.seq join text_body b on b.id = p.id
					where c.actor = :author and c.kind not in ('imported', 'owner-recorded', 'owner-ended', 'consent-recorded')
						and c.county = :county""")
			.param("seq", change.seq())
			.param("at", SqlTime.of(change.recordedAt()))
			.param("by", by)
			.param("ground", ground)
			.param("author", author)
			.param("county", change.county())
			.update();
		change.wrote(FactTable.TEXT_ERASURE);
		this.jdbc.sql("delete from text_body where id in (select text from text_erasure where county = ? and seq = ?)")
			.params(change.county(), change.seq())
			.update();
	}

}

package county.bigtree.registry.journal;

import county.bigtree.registry.id.Uuid7;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.util.Optional;
import java.util.UUID;

import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * People's own words, kept beside the facts: a fact holds the id of a piece of text, the
 * journal its salted digest, and the words can be erased without breaking either.
 */
@Component
public class Texts {

	private static final SecureRandom RANDOM = new SecureRandom();

	private final JdbcClient jdbc;

	Texts(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * Keeps the words with the change, and answers their id; null for no words.
	 */
	public @Nullable UUID keep(Change change, @Nullable String words) {
		return (words == null || words.isBlank()) ? null : keepAlways(change, words);
	}

	/**
	 * Keeps words that are never absent.
	 */
	public UUID keepAlways(Change change, String words) {
		byte[] salt = new byte[16];
		RANDOM.nextBytes(salt);
		UUID id = Uuid7.next();
		this.jdbc.sql("insert into text_piece (id, county, seq, recorded_at, digest) values (?, ?, ?, ?, ?)")
			.params(id, change.county(), change.seq(), SqlTime.of(change.recordedAt()),
					Entry.hash(salt, words.getBytes(StandardCharsets.UTF_8)))
			.update();
		this.jdbc.sql("insert into text_body (id, salt, body) values (?, ?, ?)").params(id, salt, words).update();
		change.wrote(FactTable.TEXT_PIECE);
		return id;
	}

	/**
	 * The words with this id; empty if there were none or they have been erased.
	 */
	public Optional<String> find(@Nullable UUID id) {
		return (id == null) ? Optional.empty()
				: this.jdbc.sql("select body from text_body where id = ?").param(id).query(String.class).optional();
	}

}

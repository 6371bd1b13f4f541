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

	private final Facts facts;

	Texts(JdbcClient jdbc, Facts facts) {
		this.jdbc = jdbc;
		this.facts = facts;
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
		this.facts.append(change, FactTable.TEXT_PIECE, "id", id, "digest",
				Entry.hash(salt, words.getBytes(StandardCharsets.UTF_8)));
		this.facts.write(change, FactTable.TEXT_PIECE, "insert into text_body (id, salt, body) values (?, ?, ?)", id,
				salt, words);
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

package county.bigtree.registry.journal;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.OptionalLong;
import java.util.stream.Stream;

import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import org.jspecify.annotations.Nullable;
import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * People's words are those of which the journal holds the digest, and none are missing
 * but those of which it says that they were erased.
 */
@Component
@Order(2)
class WordsCheck implements RegisterCheck {

	private static final int FETCH = 1000;

	private final JdbcClient jdbc;

	WordsCheck(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	@Override
	public String subject() {
		return "pieces of people's words";
	}

	@Override
	public OptionalLong expected() {
		return OptionalLong.of(this.jdbc.sql("select count(*) from text_piece").query(Long.class).single());
	}

	@Override
	public void look(Findings findings) {
		try (Stream<Piece> pieces = pieces()) {
			pieces.forEach((piece) -> {
				findings.looked();
				if (piece.erased()) {
					if (piece.body() != null) {
						findings.add("%s: the words of piece %s (change %d) were erased and are still there"
							.formatted(piece.county(), piece.id(), piece.seq()));
					}
				}
				else if (piece.body() == null || piece.salt() == null) {
					findings.add("%s: the words of piece %s (change %d) are missing".formatted(piece.county(),
							piece.id(), piece.seq()));
				}
				else if (!Arrays.equals(piece.digest(),
						Entry.hash(piece.salt(), piece.body().getBytes(StandardCharsets.UTF_8)))) {
					findings.add("%s: the words of piece %s (change %d) are not those that were recorded"
						.formatted(piece.county(), piece.id(), piece.seq()));
				}
			});
		}
	}

	private Stream<Piece> pieces() {
		return this.jdbc.sql("""
				select p.county, p.seq, p.id::text as id, p.digest, b.salt, b.body, e.text is not null as erased
				from text_piece p left join text_body b on b.id = p.id left join text_erasure e on e.text = p.id""")
			.withFetchSize(FETCH)
			.query((row, number) -> new Piece(row.getString("county"), row.getLong("seq"), row.getString("id"),
					row.getBytes("digest"), row.getBytes("salt"), row.getString("body"), row.getBoolean("erased")))
			.stream();
	}

	private record Piece(String county, long seq, String id, byte[] digest, byte @Nullable [] salt,
			@Nullable String body, boolean erased) {
	}

}

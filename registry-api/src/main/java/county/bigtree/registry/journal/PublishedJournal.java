package county.bigtree.registry.journal;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

/**
 * What of the journal is for everyone: the seals, and of each change its county, number,
 * instant, the digest of its entry and the hash of the chain. An entry holds an id that
 * is published nowhere and can't be guessed, so that its digest gives nothing away.
 */
@Service
public class PublishedJournal {

	private static final int FETCH = 2000;

	private final JdbcClient jdbc;

	PublishedJournal(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * The seals with a lower number, newest first.
	 */
	@Transactional(readOnly = true)
	public List<PublishedSeal> seals(long before, int limit) {
		return this.jdbc.sql("select * from seal where number < ? order by number desc limit ?")
			.params(before, limit)
			.query(Seal::read)
			.list()
			.stream()
			.map(PublishedSeal::from)
			.toList();
	}

	@Transactional(readOnly = true)
	public Optional<PublishedSeal> seal(long number) {
		return this.jdbc.sql("select * from seal where number = ?")
			.param(number)
			.query(Seal::read)
			.optional()
			.map(PublishedSeal::from);
	}

	/**
	 * Writes it all, a JSON object a line: the changes of one county after the other,
	 * then the seals.
	 */
	@Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
	public void write(Writer to) {
		writeAll(to, this.jdbc.sql("""
				select format('{"county":"%s","seq":%s,"recordedAt":"%s","digest":"%s","hash":"%s"}', county, seq,
				  to_char(recorded_at at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.US"Z"'),
				  encode(sha256(entry), 'hex'), encode(hash, 'hex'))
				from change order by county, seq""").withFetchSize(FETCH).query(String.class).stream());
		writeAll(to,
				this.jdbc.sql("select * from seal order by number")
					.withFetchSize(FETCH)
					.query(Seal::read)
					.stream()
					.map((seal) -> "{\"seal\":%d,\"text\":\"%s\",\"hash\":\"%s\"}".formatted(seal.number(),
							seal.text().replace("\\", "\\\\").replace("\"", "\\\""), seal.hex())));
	}

	private static void writeAll(Writer to, Stream<String> lines) {
		try (lines) {
			lines.forEach((line) -> {
				try {
					to.write(line);
					to.write('\n');
				}
				catch (IOException ex) {
					throw new UncheckedIOException(ex);
				}
			});
		}
	}

	/**
	 * A seal as everyone sees it.
	 *
	 * @param text what was hashed, to the letter
	 * @param hash in hexadecimal digits
	 */
	public record PublishedSeal(long number, java.time.LocalDate day, java.time.Instant sealedAt, String text,
			String hash) {

		static PublishedSeal from(Seal seal) {
			return new PublishedSeal(seal.number(), seal.day(), seal.sealedAt(), seal.text(),
					HexFormat.of().formatHex(seal.hash()));
		}

	}

}

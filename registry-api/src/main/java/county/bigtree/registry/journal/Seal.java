package county.bigtree.registry.journal;

import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Collectors;

/**
 * The heads of all counties at one instant, sealed together and chained to the seal
 * before.
 *
 * @param number counts from 1 without a gap
 * @param day the day in UTC; one seal a day
 * @param body the bytes that were hashed: JSON, its members in the order of their names
 * @param hash SHA-256 of the hash before it followed by the SHA-256 of the body
 */
record Seal(long number, LocalDate day, Instant sealedAt, byte[] body, byte[] hash) {

	static final byte[] NONE = new byte[0];

	static Seal of(long number, LocalDate day, Instant at, List<Head> heads, byte[] before) {
		Entry entry = Entry.after(before, text(number, day, at, heads));
		return new Seal(number, day, at, entry.bytes(), entry.hash());
	}

	static String text(long number, LocalDate day, Instant at, List<Head> heads) {
		return "{\"day\":\"%s\",\"heads\":[%s],\"number\":%d,\"sealedAt\":\"%s\"}".formatted(day,
				heads.stream()
					.sorted(Comparator.comparing(Head::county))
					.map(Head::text)
					.collect(Collectors.joining(",")),
				number, at);
	}

	static Seal read(ResultSet row, int number) throws SQLException {
		return new Seal(row.getLong("number"), row.getObject("day", LocalDate.class), SqlTime.get(row, "sealed_at"),
				row.getBytes("body"), row.getBytes("hash"));
	}

	String text() {
		return new String(this.body, StandardCharsets.UTF_8);
	}

	String hex() {
		return HexFormat.of().formatHex(this.hash);
	}

	/**
	 * The end of a county's chain.
	 *
	 * @param seq the number of its last change
	 * @param hash the hash of that, in hexadecimal digits
	 */
	record Head(String county, long seq, String hash) {

		String text() {
			return "{\"county\":\"%s\",\"hash\":\"%s\",\"seq\":%d}".formatted(this.county, this.hash, this.seq);
		}

	}

}

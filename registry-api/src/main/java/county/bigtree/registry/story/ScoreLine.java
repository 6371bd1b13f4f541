package county.bigtree.registry.story;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.standing.BookKey;
import org.jspecify.annotations.Nullable;

/**
 * A score as the register knew it: the days on which it holds, and the instants at which
 * it was recorded, found to have ended, and withdrawn.
 *
 * @param endsOn the day after its last, or null while it is open
 * @param ended why it ended
 * @param withdrawn why it was withdrawn
 */
record ScoreLine(BookKey book, UUID tree, String tag, UUID measurement, BigDecimal points, LocalDate effectiveOn,
		@Nullable LocalDate endsOn, @Nullable String ended, Instant recordedAt, @Nullable Instant closedAt,
		@Nullable Instant withdrawnAt, @Nullable String withdrawn) {

	static ScoreLine of(ResultSet row, int number) throws SQLException {
		return new ScoreLine(new BookKey(row.getString("county"), row.getString("species")),
				row.getObject("tree", UUID.class), row.getString("tag"), row.getObject("measurement", UUID.class),
				row.getBigDecimal("points"), row.getObject("effective_on", LocalDate.class),
				row.getObject("ends_on", LocalDate.class), row.getString("ended"), SqlTime.get(row, "recorded_at"),
				SqlTime.find(row, "closed_at"), SqlTime.find(row, "withdrawn_at"), row.getString("withdrawn"));
	}

	/**
	 * Whether it is the present score at the instant.
	 */
	boolean presentAt(Instant at) {
		return !this.recordedAt.isAfter(at) && later(this.closedAt, at) && later(this.withdrawnAt, at);
	}

	/**
	 * Whether it is the present score until just before the instant.
	 */
	boolean presentBefore(Instant at) {
		return this.recordedAt.isBefore(at) && !earlier(this.closedAt, at) && !earlier(this.withdrawnAt, at);
	}

	/**
	 * Whether it was never present: it had ended by the day on which it was recorded.
	 */
	boolean ofThePast() {
		return this.recordedAt.equals(this.closedAt);
	}

	/**
	 * Whether it was withdrawn before the instant.
	 */
	boolean withdrawnBefore(Instant at) {
		return earlier(this.withdrawnAt, at);
	}

	private static boolean later(@Nullable Instant end, Instant at) {
		return end == null || end.isAfter(at);
	}

	private static boolean earlier(@Nullable Instant end, Instant at) {
		return end != null && end.isBefore(at);
	}

}

package county.bigtree.registry.standby;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;

import javax.sql.DataSource;

/**
 * How far the primary was when it was asked: what a standby must have replayed so that
 * nothing is missing there that anybody was told before. Positions are those of
 * PostgreSQL's write-ahead log, so that no clock is trusted and an idle primary is no
 * lag.
 *
 * @param position in the log, behind all commits that are visible or acknowledged
 * @param timeline the log's; a standby of another timeline has another history
 * @param system the identifier of the cluster
 * @param clock the primary's
 * @param told when it was told, by the clock of this process ({@link System#nanoTime()})
 */
record PrimaryMark(String position, long timeline, long system, Instant clock, long told) {

	/**
	 * Dates and consents are judged by the clock of the server that reads.
	 */
	static final Duration CLOCKS_APART = Duration.ofMillis(500);

	/** Where commits are not waited for, they may be visible before they are written. */
	private static final String MARK = """
			select at::text, ('x' || left(pg_walfile_name(at), 8))::bit(32)::bigint,
				(select system_identifier from pg_control_system()), clock_timestamp()
			from (select case current_setting('synchronous_commit') when 'off' then pg_current_wal_insert_lsn()
				else pg_current_wal_flush_lsn() end at) here
			""";

	/**
	 * The timeline of a standby is known from its control file, which may say an earlier
	 * one for a while after a failover, and never a later one.
	 */
	private static final String REPLAYED = """
			select pg_is_in_recovery(), pg_last_wal_replay_lsn() >= ?::pg_lsn,
				greatest((select timeline_id from pg_control_checkpoint()),
					(select min_recovery_end_timeline from pg_control_recovery())),
				(select system_identifier from pg_control_system()), clock_timestamp()
			""";

	static PrimaryMark of(DataSource primary) throws SQLException {
		try (Connection connection = primary.getConnection();
				Statement statement = connection.createStatement();
				ResultSet row = statement.executeQuery(MARK)) {
			row.next();
			return new PrimaryMark(row.getString(1), row.getLong(2), row.getLong(3), instant(row, 4),
					System.nanoTime());
		}
	}

	/** What may be read from the server at the other end. */
	Found judge(Connection standby) throws SQLException {
		try (PreparedStatement statement = standby.prepareStatement(REPLAYED)) {
			statement.setString(1, this.position);
			try (ResultSet row = statement.executeQuery()) {
				row.next();
				return judge(row.getBoolean(1), row.getBoolean(2), row.getLong(3), row.getLong(4), instant(row, 5),
						System.nanoTime());
			}
		}
	}

	Found judge(boolean recovering, boolean replayed, long itsTimeline, long itsSystem, Instant itsClock, long now) {
		if (!recovering || itsSystem != this.system) {
			return Found.NO_STANDBY;
		}
		if (itsTimeline != this.timeline) {
			return Found.OTHER_TIMELINE;
		}
		Duration apart = Duration.between(this.clock.plusNanos(now - this.told), itsClock).abs();
		if (apart.compareTo(CLOCKS_APART) > 0) {
			return Found.OTHER_CLOCK;
		}
		return replayed ? Found.LEVEL : Found.BEHIND;
	}

	private static Instant instant(ResultSet row, int column) throws SQLException {
		return row.getObject(column, OffsetDateTime.class).toInstant();
	}

	/**
	 * What a server is.
	 */
	enum Found {

		/** It has all that the primary had. */
		LEVEL("is level"),

		BEHIND("is behind"),

		/** It was promoted, or belongs to another cluster. */
		NO_STANDBY("is no standby of the primary"),

		OTHER_TIMELINE("has not followed the primary to its timeline"),

		OTHER_CLOCK("has a clock that is more than half a second off the primary's");

		private final String words;

		Found(String words) {
			this.words = words;
		}

		String words() {
			return this.words;
		}

	}

}

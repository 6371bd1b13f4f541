package county.bigtree.registry.journal;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;

import org.jspecify.annotations.Nullable;

/**
 * Instants as the database driver takes and gives them, in microseconds.
 */
public final class SqlTime {

	private SqlTime() {
	}

	public static OffsetDateTime of(Instant instant) {
		return instant.truncatedTo(ChronoUnit.MICROS).atOffset(ZoneOffset.UTC);
	}

	public static Instant instant(OffsetDateTime time) {
		return time.toInstant().truncatedTo(ChronoUnit.MICROS);
	}

	/**
	 * The instant in a column that is never null.
	 */
	public static Instant get(ResultSet row, String column) throws SQLException {
		return instant(row.getObject(column, OffsetDateTime.class));
	}

	/**
	 * The instant in a column, or null.
	 */
	public static @Nullable Instant find(ResultSet row, String column) throws SQLException {
		OffsetDateTime time = row.getObject(column, OffsetDateTime.class);
		return (time != null) ? instant(time) : null;
	}

}

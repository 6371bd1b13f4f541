package county.bigtree.registry.journal;

import java.sql.Types;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.function.Supplier;

import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.SqlParameterValue;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The time by which the register stamps changes: the database's clock, in microseconds,
 * or a supplied instant while a story is replayed.
 */
@Component
public class RegisterClock {

	private final ThreadLocal<@Nullable Instant> replayed = new ThreadLocal<>();

	private final JdbcClient jdbc;

	RegisterClock(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * The present instant, in microseconds.
	 */
	public Instant now() {
		Instant instant = this.replayed.get();
		return (instant != null) ? instant : SqlTime
			.instant(this.jdbc.sql("select clock_timestamp()").query(java.time.OffsetDateTime.class).single());
	}

	/**
	 * The supplied instant, while there is one.
	 */
	public Optional<Instant> replayed() {
		return Optional.ofNullable(this.replayed.get());
	}

	/**
	 * The supplied instant, while there is one, for a statement that takes
	 * {@code clock_timestamp()} where it is null and so needs not ask for it first.
	 */
	public SqlParameterValue orDatabaseClock() {
		Instant instant = this.replayed.get();
		return new SqlParameterValue(Types.TIMESTAMP_WITH_TIMEZONE, (instant != null) ? SqlTime.of(instant) : null);
	}

	/**
	 * Does the work as if it were done at the instant.
	 */
	public <T> T replayAt(Instant instant, Supplier<T> work) {
		Instant before = this.replayed.get();
		this.replayed.set(instant.truncatedTo(ChronoUnit.MICROS));
		try {
			return work.get();
		}
		finally {
			if (before == null) {
				this.replayed.remove();
			}
			else {
				this.replayed.set(before);
			}
		}
	}

}

package county.bigtree.registry.standby;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.LongAdder;

import javax.sql.DataSource;

import com.zaxxer.hikari.HikariDataSource;
import com.zaxxer.hikari.HikariPoolMXBean;
import com.zaxxer.hikari.metrics.micrometer.MicrometerMetricsTrackerFactory;
import io.micrometer.core.instrument.FunctionCounter;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.binder.MeterBinder;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Connections to the standbys, given only where what is read over them is no older than
 * the moment at which they were asked for. Where that can't be had at once none is given,
 * and none is tried for for a while: a standby that fails costs the requests that are
 * under way, and then one every few seconds.
 */
class Standby implements MeterBinder, AutoCloseable {

	/** How long the standby may take to replay what was just committed. */
	private static final Duration WAIT = Duration.ofMillis(100);

	private static final Duration STEP = Duration.ofMillis(4);

	/** After it failed, and after it was behind. */
	private static final Duration LONG_REST = Duration.ofSeconds(5);

	private static final Duration SHORT_REST = Duration.ofMillis(500);

	private static final int MILLIS_TO_ANSWER = 1000;

	/**
	 * Cancelled so that replaying can go on, or because it took too long, or waited for a
	 * lock, or tried to write: nothing is wrong with the standby (PostgreSQL manual,
	 * appendix A).
	 */
	private static final Set<String> OF_ONE_QUERY = Set.of("40001", "57014", "55P03", "25006");

	private static final Logger logger = LoggerFactory.getLogger(Standby.class);

	private final HikariDataSource pool = new HikariDataSource();

	private final StandbySettings settings;

	/** When it may be tried again; zero where nothing is wrong. */
	private final AtomicLong restsUntil = new AtomicLong();

	private volatile @Nullable String told;

	private final LongAdder given = new LongAdder();

	private final LongAdder refused = new LongAdder();

	private final LongAdder repeated = new LongAdder();

	Standby(StandbySettings settings) {
		this.settings = settings;
	}

	/**
	 * The primary's connections, where reads that may go to a standby do so.
	 */
	DataSource inFrontOf(HikariDataSource primary, StandbyReads reads) {
		this.pool.setPoolName("standby");
		this.pool.setJdbcUrl(this.settings.url());
		this.pool.setUsername((this.settings.username() != null) ? this.settings.username() : primary.getUsername());
		this.pool.setPassword((this.settings.password() != null) ? this.settings.password() : primary.getPassword());
		this.pool.setReadOnly(true);
		this.pool.setMaximumPoolSize(this.settings.connections());
		this.pool.setMinimumIdle(1);
		this.pool.setConnectionTimeout(MILLIS_TO_ANSWER);
		this.pool.setValidationTimeout(MILLIS_TO_ANSWER / 2);
		this.pool.setInitializationFailTimeout(-1);
		this.pool.setConnectionInitSql(primary.getConnectionInitSql());
		this.pool.setDataSourceProperties(primary.getDataSourceProperties());
		this.pool.addDataSourceProperty("ApplicationName", "registry standby");
		this.pool.addDataSourceProperty("targetServerType", "secondary");
		this.pool.addDataSourceProperty("connectTimeout", "1");
		this.pool.addDataSourceProperty("socketTimeout", "5");
		return new RoutedDataSource(primary, new ReadRoute(primary, this, reads));
	}

	/**
	 * A connection to a standby that has all that the primary has now.
	 * @return null where the primary is to be read
	 * @throws SQLException if the primary does not say how far it is
	 */
	@Nullable Connection level(DataSource primary) throws SQLException {
		if (rests() || isFull()) {
			this.refused.increment();
			return null;
		}
		Connection connection = connect(PrimaryMark.of(primary));
		(connection != null ? this.given : this.refused).increment();
		return connection;
	}

	private @Nullable Connection connect(PrimaryMark mark) {
		Connection connection = null;
		try {
			connection = this.pool.getConnection();
			PrimaryMark.Found found = judge(connection, mark);
			if (found == PrimaryMark.Found.LEVEL) {
				well();
				return connection;
			}
			if (found == PrimaryMark.Found.BEHIND) {
				connection.close();
				rest(SHORT_REST, null);
				return null;
			}
			this.pool.evictConnection(connection);
			rest(LONG_REST, found.words());
		}
		catch (SQLException ex) {
			if (connection != null) {
				this.pool.evictConnection(connection);
			}
			rest(LONG_REST, "fails: " + ex.getMessage());
		}
		return null;
	}

	/** Waits a little for what was just committed. */
	private static PrimaryMark.Found judge(Connection connection, PrimaryMark mark) throws SQLException {
		int usual = connection.getNetworkTimeout();
		connection.setNetworkTimeout(Runnable::run, MILLIS_TO_ANSWER);
		long until = System.nanoTime() + WAIT.toNanos();
		PrimaryMark.Found found = mark.judge(connection);
		while (found == PrimaryMark.Found.BEHIND && System.nanoTime() - until < 0 && pause()) {
			found = mark.judge(connection);
		}
		connection.setNetworkTimeout(Runnable::run, usual);
		return found;
	}

	private static boolean pause() {
		try {
			Thread.sleep(STEP.toMillis());
			return true;
		}
		catch (InterruptedException ex) {
			Thread.currentThread().interrupt();
			return false;
		}
	}

	/** What was read from it failed, and is read from the primary. */
	void failed(SQLException failure) {
		this.repeated.increment();
		if (!OF_ONE_QUERY.contains(String.valueOf(failure.getSQLState()))) {
			rest(LONG_REST, "fails: " + failure.getMessage());
		}
	}

	/** Once it may be tried again, one tries and the others wait to see. */
	private boolean rests() {
		long until = this.restsUntil.get();
		if (until == 0) {
			return false;
		}
		long now = System.nanoTime();
		return now - until < 0 || !this.restsUntil.compareAndSet(until, later(now, LONG_REST));
	}

	private void rest(Duration pause, @Nullable String why) {
		this.restsUntil.set(later(System.nanoTime(), pause));
		if (why != null && this.told == null) {
			logger.warn("The standby {}; the primary is read", why);
			this.told = why;
		}
	}

	private void well() {
		this.restsUntil.set(0);
		if (this.told != null) {
			this.told = null;
			logger.info("The standby is read again");
		}
	}

	/** Never zero. */
	private static long later(long now, Duration pause) {
		return (now + pause.toNanos()) | 1;
	}

	private boolean isFull() {
		HikariPoolMXBean running = this.pool.getHikariPoolMXBean();
		return running != null && running.getActiveConnections() >= this.settings.connections();
	}

	@Override
	public void bindTo(MeterRegistry meters) {
		this.pool.setMetricsTrackerFactory(new MicrometerMetricsTrackerFactory(meters));
		counter(meters, "standby", this.given);
		counter(meters, "primary", this.refused);
		counter(meters, "again", this.repeated);
	}

	private static void counter(MeterRegistry meters, String from, LongAdder count) {
		FunctionCounter.builder("registry.standby.reads", count, LongAdder::sum)
			.tag("from", from)
			.description("Transactions of reads that may go to a standby, by where they went")
			.register(meters);
	}

	@Override
	public void close() {
		this.pool.close();
	}

}

package county.bigtree.registry.readcache;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.concurrent.TimeUnit;

import org.jspecify.annotations.Nullable;
import org.postgresql.PGConnection;
import org.postgresql.PGNotification;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.beans.factory.DisposableBean;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.stereotype.Component;

/**
 * Reads the versions of the counties that somebody asks for, on a connection of its own:
 * when another node says that it changed something, and every 300 ms whether one does or
 * not. That other nodes speak up is a help and never relied on. Where the connection is
 * lost it is opened again; who asks meanwhile reads the version alone.
 */
@Component
class FollowVersions implements DisposableBean {

	/** On which nodes say whose county they changed. */
	static final String CHANNEL = "county_changed";

	static final String APPLICATION_NAME = "registry versions";

	private static final int EVERY_MILLIS = 300;

	/** Of many changes in a row some are looked at together. */
	private static final int BREATH_MILLIS = 20;

	private static final Logger logger = LoggerFactory.getLogger(FollowVersions.class);

	private final JdbcConnectionDetails database;

	private @Nullable Thread thread;

	private volatile boolean stopped;

	private volatile boolean following;

	FollowVersions(JdbcConnectionDetails database) {
		this.database = database;
	}

	/** Begins to follow, if it has not begun yet. */
	void follow(RegisterVersions versions) {
		if (!this.following) {
			begin(versions);
		}
	}

	private synchronized void begin(RegisterVersions versions) {
		if (this.thread == null && !this.stopped) {
			Thread begun = new Thread(() -> run(versions), "follow-versions");
			begun.setDaemon(true);
			begun.start();
			this.thread = begun;
			this.following = true;
		}
	}

	@Override
	public synchronized void destroy() throws InterruptedException {
		this.stopped = true;
		if (this.thread != null) {
			this.thread.interrupt();
			this.thread.join(TimeUnit.SECONDS.toMillis(2));
		}
	}

	private void run(RegisterVersions versions) {
		boolean told = false;
		while (!this.stopped) {
			try (Connection connection = open()) {
				told = false;
				listen(connection, versions);
			}
			catch (SQLException | RuntimeException ex) {
				if (!told && !this.stopped) {
					logger.warn("Versions of counties can't be followed, and are read one by one: {}", ex.getMessage());
				}
				told = true;
				pause(EVERY_MILLIS);
			}
		}
	}

	private Connection open() throws SQLException {
		Properties properties = new Properties();
		properties.setProperty("ApplicationName", APPLICATION_NAME);
		properties.setProperty("tcpKeepAlive", "true");
		properties.setProperty("connectTimeout", "2");
		properties.setProperty("socketTimeout", "5");
		String user = this.database.getUsername();
		String password = this.database.getPassword();
		if (user != null) {
			properties.setProperty("user", user);
		}
		if (password != null) {
			properties.setProperty("password", password);
		}
		return DriverManager.getConnection(this.database.getJdbcUrl(), properties);
	}

	private void listen(Connection connection, RegisterVersions versions) throws SQLException {
		try (Statement statement = connection.createStatement()) {
			statement.execute("listen " + CHANNEL);
		}
		try (PreparedStatement counties = connection.prepareStatement(RegisterVersions.OF_COUNTIES);
				PreparedStatement all = connection.prepareStatement(RegisterVersions.OF_ALL)) {
			while (!this.stopped) {
				PGNotification[] changes = connection.unwrap(PGConnection.class).getNotifications(EVERY_MILLIS);
				if (changes.length > 0) {
					versions.forget(Arrays.stream(changes).map(PGNotification::getParameter).distinct().toList());
					pause(BREATH_MILLIS);
				}
				read(versions, counties, all);
			}
		}
	}

	private static void read(RegisterVersions versions, PreparedStatement counties, PreparedStatement all)
			throws SQLException {
		List<String> inUse = versions.inUse();
		Map<String, Long> epochs = new HashMap<>();
		inUse.forEach((scope) -> epochs.put(scope, versions.epoch(scope)));
		long begun = System.nanoTime();
		if (epochs.containsKey(RegisterVersions.ALL)) {
			try (ResultSet row = all.executeQuery()) {
				row.next();
				versions.learn(RegisterVersions.ALL, row.getString(1), begun,
						epochs.getOrDefault(RegisterVersions.ALL, -1L));
			}
		}
		if (inUse.isEmpty()) {
			return;
		}
		counties.setArray(1, counties.getConnection().createArrayOf("text", inUse.toArray()));
		try (ResultSet row = counties.executeQuery()) {
			while (row.next()) {
				String county = row.getString(1);
				versions.learn(county, row.getString(2), begun, epochs.getOrDefault(county, -1L));
			}
		}
	}

	private void pause(int millis) {
		try {
			Thread.sleep(millis);
		}
		catch (InterruptedException ex) {
			Thread.currentThread().interrupt();
			this.stopped = true;
		}
	}

}

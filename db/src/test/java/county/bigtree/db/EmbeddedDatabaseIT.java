package county.bigtree.db;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

import static org.assertj.core.api.Assertions.assertThat;

class EmbeddedDatabaseIT {

	private final Path folder;

	EmbeddedDatabaseIT(@TempDir Path folder) {
		this.folder = folder;
	}

	@Test
	void runsWithSettingsThatKeepAcknowledgedWrites() throws SQLException {
		try (EmbeddedDatabase database = EmbeddedDatabase.start(this.folder)) {
			DatabaseMigrations.migrate(database.owner(), EmbeddedDatabase.SERVICE_ROLE);
			assertThat(ask(database.service(), "show fsync")).isEqualTo("on");
			assertThat(ask(database.service(), "show synchronous_commit")).isEqualTo("on");
			assertThat(ask(database.service(), "show full_page_writes")).isEqualTo("on");
			assertThat(ask(database.service(), "show listen_addresses")).isEqualTo("127.0.0.1");
		}
	}

	private static String ask(DatabaseLogin login, String query) throws SQLException {
		try (Connection connection = login.dataSource().getConnection();
				Statement statement = connection.createStatement();
				ResultSet answer = statement.executeQuery(query)) {
			answer.next();
			return answer.getString(1);
		}
	}

}

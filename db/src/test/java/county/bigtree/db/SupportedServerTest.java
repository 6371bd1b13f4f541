package county.bigtree.db;

import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.sql.DatabaseMetaData;
import java.sql.SQLException;
import java.util.function.Function;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

class SupportedServerTest {

	@ParameterizedTest
	@ValueSource(ints = { 15, 16, 17, 18 })
	void takesPostgres15To18(int version) {
		assertThatCode(() -> DatabaseMigrations.requireSupported(server("PostgreSQL", version)))
			.doesNotThrowAnyException();
	}

	@ParameterizedTest
	@CsvSource({ "PostgreSQL, 14", "PostgreSQL, 19", "MariaDB, 15" })
	void refusesOthersWithOneSentence(String product, int version) {
		assertThatThrownBy(() -> DatabaseMigrations.requireSupported(server(product, version)))
			.isInstanceOf(DatabaseUnavailable.class)
			.hasMessage("The database is " + product + " " + version + ", but this release needs PostgreSQL 15 to 18:"
					+ " name such a server with --spring.datasource.url.");
	}

	@Test
	void showsNoPasswordOfALogin() {
		DatabaseLogin login = new DatabaseLogin("jdbc:postgresql://127.0.0.1/registry", "registry", "oak-gall");
		assertThat(login.toString()).isEqualTo("registry at jdbc:postgresql://127.0.0.1/registry");
	}

	private static Connection server(String product, int version) throws SQLException {
		DatabaseMetaData metaData = answering(DatabaseMetaData.class, (method) -> switch (method) {
			case "getDatabaseProductName" -> product;
			case "getDatabaseMajorVersion" -> version;
			default -> throw new UnsupportedOperationException(method);
		});
		return answering(Connection.class, (method) -> metaData);
	}

	private static <T> T answering(Class<T> type, Function<String, Object> answers) {
		return type.cast(Proxy.newProxyInstance(type.getClassLoader(), new Class<?>[] { type },
				(proxy, method, arguments) -> answers.apply(method.getName())));
	}

}

package county.bigtree.registry.database;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

import county.bigtree.db.DatabaseMigrations;
import county.bigtree.db.TestDatabase;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.support.DefaultListableBeanFactory;
import org.springframework.mock.env.MockEnvironment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

/**
 * What is done before a schema is changed: for a register that is there and not of this
 * release's schema, and for no other.
 */
class MigratingIT {

	private static final String EARLIER = "202611261050";

	@Test
	void isDoneBeforeAnEarlierSchemaIsChangedAndElseNever() {
		try (TestDatabase database = TestDatabase.empty()) {
			Flyway flyway = flyway(database);
			List<String> found = new ArrayList<>();
			migrate(flyway, found::add);
			assertThat(found).isEmpty();
			migrate(flyway, found::add);
			assertThat(found).isEmpty();
		}
		try (TestDatabase database = TestDatabase.empty()) {
			Flyway flyway = flyway(database);
			DatabaseMigrations.bringTo(flyway, EARLIER);
			List<String> found = new ArrayList<>();
			migrate(flyway, found::add);
			assertThat(found).containsExactly(EARLIER);
			assertThat(DatabaseMigrations.version(flyway)).contains(DatabaseMigrations.newestVersion(flyway));
		}
	}

	@Test
	void keepsTheSchemaWhereThatFails() {
		try (TestDatabase database = TestDatabase.empty()) {
			Flyway flyway = flyway(database);
			DatabaseMigrations.bringTo(flyway, EARLIER);
			assertThatThrownBy(() -> migrate(flyway, (version) -> {
				throw new NotMigrated("No room.", new IllegalStateException());
			})).isInstanceOf(NotMigrated.class);
			assertThat(DatabaseMigrations.version(flyway)).contains(EARLIER);
		}
	}

	private static void migrate(Flyway flyway, Consumer<String> before) {
		DefaultListableBeanFactory beans = new DefaultListableBeanFactory();
		beans.registerSingleton("before", (BeforeMigration) before::accept);
		new Migrating().bringUpToDate(new MockEnvironment(), beans.getBeanProvider(BeforeMigration.class))
			.migrate(flyway);
	}

	private static Flyway flyway(TestDatabase database) {
		return DatabaseMigrations
			.configure(Flyway.configure().dataSource(database.owner().dataSource()), database.service().user())
			.load();
	}

}

package county.bigtree.db;

import java.sql.SQLException;
import java.util.List;

import org.assertj.core.api.SoftAssertions;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

/**
 * Holds for every table there is, whoever added it. SQLSTATEs: PostgreSQL documentation,
 * appendix A.
 */
class MigrationIT {

	private static final String NO_PRIVILEGE = "42501";

	private static final String WRITTEN_ONCE = "23001";

	private static final String TABLES = """
			select c.relname from pg_class c
			where c.relnamespace = 'public'::regnamespace and c.relkind in ('r', 'p')
			and c.relname <> 'flyway_schema_history' order by 1""";

	private static final String APPEND_ONLY = "with t as (" + TABLES
			+ ") select relname from t where relname not in (select table_name from changeable_table) order by 1";

	private final TestDatabase database = TestDatabase.migrated();

	private final Sql owner = new Sql(this.database.owner());

	private final Sql service = new Sql(this.database.service());

	@AfterEach
	void drop() {
		this.database.close();
	}

	@Test
	void bringsAnEmptyDatabaseToTheLatestSchemaAndThenHasNothingToDo() {
		try (TestDatabase empty = TestDatabase.empty()) {
			assertThat(DatabaseMigrations.migrate(empty.owner(), TestServer.SERVICE)).isPositive();
			assertThat(DatabaseMigrations.migrate(empty.owner(), TestServer.SERVICE)).isZero();
		}
	}

	@Test
	void refusesADatabaseThatANewerReleaseWrote() throws SQLException {
		this.owner.execute("""
				insert into flyway_schema_history (installed_rank, version, description, type, script, installed_by,
				execution_time, success) values (9999, '999901010000', 'to come', 'SQL', 'V999901010000__to_come.sql',
				'owner', 1, true)""");
		assertThatThrownBy(() -> DatabaseMigrations.migrate(this.database.owner(), TestServer.SERVICE))
			.isInstanceOf(DatabaseUnavailable.class)
			.hasMessageContaining("was written by a newer release than this one");
	}

	@Test
	void neverEmptiesASchema() {
		Flyway flyway = DatabaseMigrations
			.configure(Flyway.configure().dataSource(this.database.owner().dataSource()), TestServer.SERVICE)
			.load();
		assertThatThrownBy(flyway::clean).isInstanceOf(FlywayException.class).hasMessageContaining("clean");
	}

	@Test
	void guardsEveryTableThatIsNotListedAsChangeable() throws SQLException {
		List<String> guarded = this.owner.list("""
				select c.relname from pg_class c
				join pg_trigger row_trigger on row_trigger.tgrelid = c.oid and row_trigger.tgname = 'refuse_change'
				join pg_trigger truncate_trigger on truncate_trigger.tgrelid = c.oid
				and truncate_trigger.tgname = 'refuse_truncate'
				where row_trigger.tgenabled = 'A' and truncate_trigger.tgenabled = 'A' order by 1""");
		assertThat(this.owner.list(APPEND_ONLY)).contains("changeable_table").isEqualTo(guarded);
	}

	@Test
	void listsOnlyTablesThatExist() throws SQLException {
		assertThat(this.owner.list(TABLES))
			.containsAll(this.owner.list("select distinct table_name from changeable_table"));
	}

	@Test
	void letsTheServiceReadAndAddButNotChangeWhatIsWrittenOnce() throws SQLException {
		SoftAssertions softly = new SoftAssertions();
		for (String table : this.owner.list(APPEND_ONLY)) {
			String column = this.owner.get("select attname from pg_attribute where attrelid = '" + table
					+ "'::regclass and attnum > 0 and not attisdropped order by attnum limit 1");
			softly.assertThat(this.service.outcome("select from " + table)).as("reads %s", table).isEqualTo(Sql.DONE);
			for (String statement : List.of("update %s set " + column + " = default", "delete from %s", "truncate %s",
					"alter table %s disable trigger all", "drop table %s",
					"create trigger t after insert on %s for" + " each row execute function refuse_change()")) {
				String sql = statement.formatted(table);
				softly.assertThat(this.service.outcome(sql)).as(sql).isEqualTo(NO_PRIVILEGE);
			}
		}
		softly.assertAll();
	}

	@Test
	void grantsTheServiceExactlyWhatTheListSays() throws SQLException {
		List<String> listed = this.owner.list(
				"select distinct table_name || ': ' || split_part(privilege, ' ', 1) from changeable_table order by 1");
		List<String> granted = this.owner
			.list("""
					with t as (%s) select distinct relname || ': ' || privilege from t, unnest(array['update', 'delete']) privilege
					where case privilege
					when 'delete' then has_table_privilege('%s', relname::regclass, privilege)
					else has_any_column_privilege('%s', relname::regclass, privilege) end order by 1"""
				.formatted(TABLES, TestServer.SERVICE, TestServer.SERVICE));
		assertThat(granted).isEqualTo(listed);
	}

	@Test
	void refusesEvenTheOwnerToEmptyWhatIsWrittenOnce() throws SQLException {
		SoftAssertions softly = new SoftAssertions();
		for (String table : this.owner.list(APPEND_ONLY)) {
			String sql = "truncate " + table + " cascade";
			softly.assertThat(this.owner.outcome(sql)).as(sql).isEqualTo(WRITTEN_ONCE);
		}
		softly.assertAll();
	}

	@Test
	void refusesEvenTheOwnerToChangeARowThatIsWrittenOnce() throws SQLException {
		this.owner.execute("create table girth_note (note text)");
		this.owner.execute("call make_append_only('girth_note')");
		this.owner.execute("insert into girth_note values ('as read')");
		assertThat(this.owner.outcome("update girth_note set note = 'nicer'")).isEqualTo(WRITTEN_ONCE);
		assertThat(this.owner.outcome("delete from girth_note")).isEqualTo(WRITTEN_ONCE);
		assertThatThrownBy(() -> this.owner.execute("delete from girth_note"))
			.hasMessageContaining("Rows of girth_note are written once: delete is refused");
		assertThat(this.owner.get("select note from girth_note")).isEqualTo("as read");
	}

	@Test
	void grantsColumnsAndRowsOfTablesListedAsChangeable() throws SQLException {
		this.owner.execute("create table draft (title text, state text)");
		this.owner.execute("call make_changeable('draft', 'update (state)', 'delete')");
		DatabaseMigrations.migrate(this.database.owner(), TestServer.SERVICE);
		this.service.execute("insert into draft values ('oak', 'open')");
		this.service.execute("update draft set state = 'filed'");
		assertThat(this.service.outcome("update draft set title = 'elm'")).isEqualTo(NO_PRIVILEGE);
		assertThat(this.service.outcome("truncate draft")).isEqualTo(NO_PRIVILEGE);
		assertThat(this.service.outcome("delete from draft")).isEqualTo(Sql.DONE);
	}

	@Test
	void takesBackWhatWasGrantedBesideTheList() throws SQLException {
		this.owner.execute("create table fact (body text)");
		this.owner.execute("call make_append_only('fact')");
		this.owner.execute("grant all on fact to " + TestServer.SERVICE);
		DatabaseMigrations.migrate(this.database.owner(), TestServer.SERVICE);
		assertThat(this.service.outcome("truncate fact")).isEqualTo(NO_PRIVILEGE);
		assertThat(this.service.outcome("insert into fact values ('read')")).isEqualTo(Sql.DONE);
	}

	@Test
	void refusesASchemaWithATableThatIsNeitherAppendOnlyNorChangeable() throws SQLException {
		this.owner.execute("create table forgotten (body text)");
		assertThatThrownBy(() -> DatabaseMigrations.migrate(this.database.owner(), TestServer.SERVICE))
			.hasMessageContaining("The table forgotten is neither append-only nor changeable");
	}

	@Test
	void refusesATableToBeBoth() throws SQLException {
		this.owner.execute("create table fact (body text)");
		this.owner.execute("create table draft (body text)");
		this.owner.execute("call make_append_only('fact')");
		this.owner.execute("call make_changeable('draft', 'update')");
		assertThatThrownBy(() -> this.owner.execute("call make_changeable('fact', 'update')"))
			.hasMessageContaining("fact is append-only");
		assertThatThrownBy(() -> this.owner.execute("call make_append_only('draft')"))
			.hasMessageContaining("draft is listed as changeable");
	}

	@Test
	void refusesAnUnknownPrivilegeInTheList() throws SQLException {
		this.owner.execute("create table draft (body text)");
		assertThatThrownBy(() -> this.owner.execute("call make_changeable('draft', 'truncate')"))
			.hasMessageContaining("changeable_table_privilege");
	}

	@Test
	void keepsTheServiceFromWideningItsOwnRights() {
		for (String sql : List.of("insert into changeable_table values ('fact', 'update')",
				"insert into flyway_schema_history (installed_rank) values (99)", "create table public.own (body text)",
				"set session_replication_role = replica", "alter role " + TestServer.SERVICE + " createrole")) {
			assertThat(this.service.outcome(sql)).as(sql).isEqualTo(NO_PRIVILEGE);
		}
	}

	@Test
	void guardsWhatIsWrittenOnceAlsoWhenTheServiceIsTheOwner() throws SQLException {
		try (TestDatabase single = TestDatabase.empty()) {
			DatabaseMigrations.migrate(single.owner(), DatabaseMigrations.NO_SERVICE_ROLE);
			DatabaseMigrations.migrate(single.owner(), TestServer.OWNER);
			Sql both = new Sql(single.owner());
			both.execute("create table draft (body text)");
			both.execute("call make_changeable('draft', 'update')");
			assertThat(both.outcome("delete from changeable_table")).isEqualTo(WRITTEN_ONCE);
			assertThat(both.get("select count(*) from changeable_table where table_name = 'draft'")).isEqualTo("1");
		}
	}

	@Test
	void keepsInstantsWithTheirZoneAndGivesEveryTableAKey() throws SQLException {
		assertThat(this.owner.list("""
				select table_name || '.' || column_name from information_schema.columns
				where table_schema = 'public' and data_type = 'timestamp without time zone'
				and table_name <> 'flyway_schema_history'""")).isEmpty();
		assertThat(this.owner.list("with t as (" + TABLES + ") select relname from t where not exists"
				+ " (select from pg_index where indrelid = relname::regclass and indisunique and indpred is null)"))
			.isEmpty();
	}

	@Test
	void bringsTheExtensionsThatTheSchemaNeeds() throws SQLException {
		assertThat(this.service.list("select extname from pg_extension order by 1")).contains("btree_gist", "pg_trgm",
				"unaccent");
	}

}

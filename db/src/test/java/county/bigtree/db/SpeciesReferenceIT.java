package county.bigtree.db;

import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

/**
 * The species catalogue against the FIA list it comes from: 2,677 rows, of which 270 are
 * genera (counted in the file).
 */
@TestInstance(Lifecycle.PER_CLASS)
class SpeciesReferenceIT {

	private TestDatabase database;

	@BeforeAll
	void open() {
		this.database = TestDatabase.migrated();
	}

	@AfterAll
	void close() {
		this.database.close();
	}

	@Test
	void keepsEveryRowOfTheListUnlessItIsFoldedOrNoTaxon() throws SQLException {
		int folded = 7;
		int noTaxa = 3;
		assertThat(number("select count(*) from species where source = 'FIA REF_SPECIES'"))
			.isEqualTo(2677 - folded - noTaxa);
		assertThat(number("select count(*) from species where genus_only and fia_code is not null")).isEqualTo(270 + 1);
	}

	@Test
	void hasAGenusForEverySpecies() throws SQLException {
		assertThat(number("""
				select count(*) from species s where not exists (
					select from species g where g.genus_only and g.genus = s.genus)""")).isZero();
	}

	@Test
	void leadsEveryScientificNameToOneSpecies() throws SQLException {
		assertThat(number("""
				select count(*) from (select from species_name where kind in ('accepted', 'synonym', 'former')
					group by normalised having count(*) > 1) several""")).isZero();
		assertThat(number("""
				select count(*) from species s where not exists (
					select from species_name n where n.species = s.key and n.kind = 'accepted')""")).isZero();
	}

	@Test
	void loadedAgainIsTheSame() throws SQLException {
		String digest = "select md5(string_agg(t::text, '|' order by t::text)) from (select s, n from species s left join species_name n on n.species = s.key) t";
		String before = text(digest);
		execute("update flyway_schema_history set checksum = 0 where script like '%species_catalogue' and version is null");
		execute("delete from species_name where species = 'quercus-alba'");
		assertThat(text(digest)).isNotEqualTo(before);
		DatabaseMigrations.migrate(this.database.owner(), this.database.service().user());
		assertThat(text(digest)).isEqualTo(before);
	}

	@Test
	void refusesAKeyThatIsNoAddress() {
		assertThatExceptionOfType(SQLException.class).isThrownBy(() -> execute(
				"""
						insert into species values ('Quercus alba', 'Q', 'Q', 'a', null, null, false, 'q', null, null, false, false, 'test')"""))
			.withMessageContaining("species_key_form");
	}

	private long number(String query) throws SQLException {
		return Long.parseLong(text(query));
	}

	private String text(String query) throws SQLException {
		try (Connection connection = this.database.owner().dataSource().getConnection();
				Statement statement = connection.createStatement();
				ResultSet answer = statement.executeQuery(query)) {
			assertThat(answer.next()).isTrue();
			return answer.getString(1);
		}
	}

	private void execute(String sql) throws SQLException {
		try (Connection connection = this.database.owner().dataSource().getConnection();
				Statement statement = connection.createStatement()) {
			statement.execute(sql);
		}
	}

}

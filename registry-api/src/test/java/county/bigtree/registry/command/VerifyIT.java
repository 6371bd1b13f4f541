package county.bigtree.registry.command;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import javax.sql.DataSource;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import county.bigtree.registry.journal.SealJournal;
import county.bigtree.registry.standing.KeepWitnesses;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.LazyInitializationBeanFactoryPostProcessor;
import org.springframework.context.annotation.AnnotationConfigApplicationContext;
import org.springframework.core.env.Environment;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;
import org.springframework.jdbc.support.JdbcTransactionManager;
import org.springframework.test.context.TestPropertySource;
import org.springframework.transaction.PlatformTransactionManager;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The demo's register is whole, and whatever is done to it by its owner's hand is found.
 * Each damage is looked at in the transaction that did it, and rolled back.
 */
@RegistryTest
@TestPropertySource(properties = "registry.demo=true")
class VerifyIT {

	@Autowired
	private Environment environment;

	@Autowired
	private List<RegisterCheck> checks;

	@Autowired
	private KeepWitnesses witnesses;

	@Autowired
	private SealJournal seals;

	@BeforeEach
	void keepWitnessesAndSeal() {
		this.seals.seal();
		this.witnesses.counties().forEach((county) -> this.witnesses.keep(county, LocalDate.EPOCH));
	}

	@Test
	void findsNothingWrongWithTheDemo() {
		assertThat(look(this.checks)).isEmpty();
	}

	@Test
	void countsBeforehandWhatItThenLooksAt() {
		for (RegisterCheck check : this.checks) {
			Findings findings = new Findings(0, (sentence) -> {
			}, (looked) -> {
			});
			check.look(findings);
			assertThat(check.expected()).as(check.subject()).hasValue(findings.lookedAt());
		}
	}

	@ParameterizedTest
	@EnumSource
	void findsDamage(Damage damage) throws SQLException {
		DataSource asOwner = new SingleConnectionDataSource(
				this.environment.getRequiredProperty("spring.datasource.url"),
				this.environment.getRequiredProperty("spring.flyway.user"),
				this.environment.getRequiredProperty("spring.flyway.password"), true);
		try (Connection connection = asOwner.getConnection();
				AnnotationConfigApplicationContext context = checksOn(asOwner)) {
			connection.setAutoCommit(false);
			damage(connection, damage);
			List<String> found = look(context.getBeansOfType(RegisterCheck.class).values().stream().toList());
			connection.rollback();
			assertThat(found).anyMatch((sentence) -> sentence.contains(damage.said()));
		}
		finally {
			((SingleConnectionDataSource) asOwner).destroy();
		}
	}

	private static void damage(Connection connection, Damage damage) throws SQLException {
		try (Statement statement = connection.createStatement()) {
			statement.execute("set time zone 'UTC'");
			statement.execute("""
					do $$ declare t regclass; begin
					  for t in select distinct tgrelid from pg_trigger where not tgisinternal loop
					    execute format('alter table %s disable trigger user', t);
					  end loop;
					end $$""");
			assertThat(statement.executeUpdate(damage.sql())).as("rows damaged").isPositive();
		}
	}

	private static List<String> look(List<RegisterCheck> checks) {
		List<String> found = new ArrayList<>();
		for (RegisterCheck check : checks) {
			Findings findings = new Findings(100, found::add, (looked) -> {
			});
			check.look(findings);
			assertThat(findings.lookedAt()).as(check.subject()).isPositive();
		}
		return found;
	}

	/**
	 * The same checks on one connection of the owner's.
	 */
	private static AnnotationConfigApplicationContext checksOn(DataSource dataSource) {
		AnnotationConfigApplicationContext context = new AnnotationConfigApplicationContext();
		context.registerBean(JdbcClient.class, () -> JdbcClient.create(dataSource));
		context.registerBean(JdbcTemplate.class, () -> new JdbcTemplate(dataSource));
		context.registerBean(JsonMapper.class, () -> JsonMapper.builder().build());
		context.registerBean(PlatformTransactionManager.class, () -> new JdbcTransactionManager(dataSource));
		context.addBeanFactoryPostProcessor(new LazyInitializationBeanFactoryPostProcessor());
		context.scan("county.bigtree.registry.journal", "county.bigtree.registry.rules",
				"county.bigtree.registry.standing", "county.bigtree.registry.measurement",
				"county.bigtree.registry.nomination", "county.bigtree.registry.signoff",
				"county.bigtree.registry.photo", "county.bigtree.registry.edition");
		context.refresh();
		return context;
	}

}

package county.bigtree.registry.standby;

import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicReference;

import javax.sql.DataSource;

import com.zaxxer.hikari.HikariDataSource;
import county.bigtree.db.TestDatabase;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.health.CheckReadiness;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.support.JdbcTransactionManager;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.context.TestPropertySource;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.web.servlet.HandlerMapping;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * A service whose standby is not there, and one whose standby is no standby. What is read
 * from one that is there is asked by {@code src/fault/standby-reads.py}.
 */
@RegistryTest
@TestPropertySource(properties = "registry.standby.url=jdbc:postgresql://127.0.0.1:1/nowhere")
class StandbyIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private DataSource database;

	@Autowired
	private CheckReadiness readiness;

	@Autowired
	private MeterRegistry meters;

	@Autowired
	@Qualifier("requestMappingHandlerMapping")
	private RequestMappingHandlerMapping handlers;

	@Test
	void whatIsListedIsReadByAnyone() {
		Set<String> open = new TreeSet<>();
		this.handlers.getHandlerMethods().forEach((mapping, handler) -> {
			Access access = handler.getMethodAnnotation(Access.class);
			if (access != null && access.value() == Who.ANYONE) {
				mapping.getPatternValues().forEach((address) -> open.add(mapping.getMethodsCondition() + address));
			}
		});
		assertThat(StandbyReads.LISTED).allSatisfy((address) -> assertThat(open).contains("[GET]" + address));
	}

	@Test
	void readsThePrimaryWhereTheStandbyIsNotThere() throws Exception {
		this.trees.county("mirrorless", "MRL");
		TestTrees.Filed filed = this.trees.standing("mirrorless", 100, "2020-05-02");
		double before = counted(this.meters, "primary");
		this.mvc.perform(get("/api/v1/trees/" + filed.tree() + "/scores")).andExpect(status().isOk());
		this.mvc.perform(get("/exports/mirrorless/trees.csv")).andExpect(status().isOk());
		assertThat(counted(this.meters, "primary")).isGreaterThan(before);
		assertThat(counted(this.meters, "standby")).isZero();
		for (String pool : Set.of("registry", "standby")) {
			assertThat(this.meters.get("hikaricp.connections").tag("pool", pool).gauge().value()).isNotNegative();
		}
		assertThat(this.readiness.check().isReady()).isTrue();
		assertThat(this.database).isInstanceOf(RoutedDataSource.class);
		assertThat(this.database.unwrap(HikariDataSource.class).getPoolName()).isEqualTo("registry");
	}

	@Test
	void readsThePrimaryWhereTheStandbyIsAPrimaryItself() throws Exception {
		try (TestDatabase itself = TestDatabase.migrated(); HikariDataSource primary = new HikariDataSource()) {
			primary.setJdbcUrl(itself.service().jdbcUrl());
			primary.setUsername(itself.service().user());
			primary.setPassword(itself.service().password());
			String url = primary.getJdbcUrl() + (primary.getJdbcUrl().contains("?") ? "&" : "?");
			try (Standby standby = new Standby(new StandbySettings(url + "targetServerType=any", null, null, 2))) {
				MeterRegistry counts = new SimpleMeterRegistry();
				standby.bindTo(counts);
				StandbyReads reads = new StandbyReads(standby::failed);
				DataSource routed = standby.inFrontOf(primary, reads);
				TransactionTemplate reading = new TransactionTemplate(new JdbcTransactionManager(routed));
				reading.setReadOnly(true);
				MockHttpServletRequest request = new MockHttpServletRequest("GET", "/");
				request.setAttribute(HandlerMapping.BEST_MATCHING_PATTERN_ATTRIBUTE, "/titles.atom");
				AtomicReference<String> user = new AtomicReference<>();
				reads.call(request, new MockHttpServletResponse(), () -> {
					user.set(reading.execute((status) -> JdbcClient.create(routed)
						.sql("select current_setting('application_name') || current_setting('transaction_read_only')")
						.query(String.class)
						.single()));
					return null;
				}, () -> {
				});
				assertThat(user.get()).endsWith("on").doesNotContain("standby");
				assertThat(counted(counts, "primary")).isEqualTo(1);
				assertThat(counted(counts, "standby")).isZero();
			}
		}
	}

	private static double counted(MeterRegistry meters, String from) {
		return meters.get("registry.standby.reads").tag("from", from).functionCounter().count();
	}

}

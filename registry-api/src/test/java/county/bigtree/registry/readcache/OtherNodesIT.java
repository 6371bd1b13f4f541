package county.bigtree.registry.readcache;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.List;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

/**
 * What another node changed is seen within a second, whether it says so or not and
 * whether anybody listens or not. The other node is a bare connection, of which this
 * one's watchers hear nothing.
 */
@RegistryTest
class OtherNodesIT {

	private static final Duration BOUND = Duration.ofSeconds(1);

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private JdbcConnectionDetails database;

	@Autowired
	private RegisterVersions versions;

	@Test
	void seesWithinASecondWhatAnotherNodeWrote() throws Exception {
		champion("keptpolled", "KFI");
		endTitle("keptpolled", "");
		seenWithin("keptpolled", BOUND);
	}

	@Test
	void seesAtOnceWhatAnotherNodeTellsOf() throws Exception {
		champion("kepttold", "KFJ");
		endTitle("kepttold", "; notify county_changed, 'kepttold'");
		seenWithin("kepttold", Duration.ofMillis(500));
	}

	@Test
	void seesWithinASecondWhatWasWrittenWhileItsListenerWasKilled() throws Exception {
		champion("keptkilled", "KFK");
		int killed = this.jdbc.sql("""
				select count(pg_terminate_backend(pid)) from pg_stat_activity
				where application_name = ? and datname = current_database()""")
			.param(FollowVersions.APPLICATION_NAME)
			.query(Integer.class)
			.single();
		assertThat(killed).isPositive();
		endTitle("keptkilled", "");
		seenWithin("keptkilled", BOUND);
		champion("keptrevived", "KFL");
		endTitle("keptrevived", "");
		seenWithin("keptrevived", BOUND);
	}

	@Test
	void readsVersionsOneByOneWhereNobodyCanListen() throws Exception {
		this.trees.county("keptdeaf", "KFM");
		FollowVersions deaf = new FollowVersions(new NowhereToConnect());
		try {
			RegisterVersions alone = new RegisterVersions(this.jdbc, deaf);
			String before = alone.current("keptdeaf").orElseThrow();
			String allBefore = alone.current(RegisterVersions.ALL).orElseThrow();
			this.trees.standing("keptdeaf", 100, "2020-05-02");
			long written = System.nanoTime();
			while (alone.current("keptdeaf").orElseThrow().equals(before)
					|| alone.current(RegisterVersions.ALL).orElseThrow().equals(allBefore)) {
				assertThat(Duration.ofNanos(System.nanoTime() - written)).isLessThan(BOUND);
				Thread.sleep(10);
			}
			assertThat(alone.current("no-such-county")).isEmpty();
		}
		finally {
			deaf.destroy();
		}
	}

	@Test
	void followsOnlyWhatIsAskedFor() throws Exception {
		this.trees.county("keptunasked", "KFN");
		this.trees.county("keptasked", "KFO");
		this.mvc.perform(get("/api/v1/counties/keptasked/standings"));
		assertThat(this.versions.inUse()).contains("keptasked").doesNotContain("keptunasked");
	}

	private void champion(String county, String prefix) throws Exception {
		this.trees.county(county, prefix);
		this.trees.standing(county, 100, "2020-05-02");
		assertThat(read(county)).contains("champion");
		assertThat(read(county)).contains("champion");
	}

	/** A title ended as time ends one, with what time writes to the head. */
	private void endTitle(String county, String then) throws SQLException {
		try (Connection other = DriverManager.getConnection(this.database.getJdbcUrl(), this.database.getUsername(),
				this.database.getPassword()); Statement statement = other.createStatement()) {
			other.setAutoCommit(false);
			for (String sql : List.of(
					"update title_span set to_at = now(), ended = 'stale' where county = '%s' and to_at is null",
					"update county_head set caught_up_at = now() where county = '%s'" + then)) {
				statement.execute(sql.formatted(county));
			}
			other.commit();
		}
	}

	private void seenWithin(String county, Duration bound) throws Exception {
		long written = System.nanoTime();
		while (read(county).contains("champion")) {
			assertThat(Duration.ofNanos(System.nanoTime() - written)).as(county).isLessThan(bound);
			Thread.sleep(10);
		}
	}

	private String read(String county) throws Exception {
		return this.mvc.perform(get("/api/v1/counties/" + county + "/species/quercus-alba/standing"))
			.andReturn()
			.getResponse()
			.getContentAsString();
	}

	/**
	 * A server that is not there.
	 */
	private static final class NowhereToConnect implements JdbcConnectionDetails {

		@Override
		public String getUsername() {
			return "nobody";
		}

		@Override
		public String getPassword() {
			return "nothing";
		}

		@Override
		public String getJdbcUrl() {
			return "jdbc:postgresql://127.0.0.1:1/nothing";
		}

	}

}

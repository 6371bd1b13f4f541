package county.bigtree.registry.http;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;

import javax.sql.DataSource;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Somebody holds a county's head for longer than a request may wait.
 */
@RegistryTest
class HeldHeadIT {

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private DataSource dataSource;

	@Test
	void letsWritersComeBackLaterAndRecordsNothing() throws Exception {
		this.trees.county("heldland", "HHA");
		TestTrees.Filed filed = this.trees.standing("heldland", 100, "2026-05-02");
		try (Connection other = holdHead("heldland")) {
			this.trees
				.ask(post("/api/v1/trees/" + filed.tree() + "/measurements")
					.content(TestTrees.measurement(120, "2026-06-02")), this.people.volunteer("heldland"))
				.andExpect(status().isServiceUnavailable())
				.andExpect(header().exists(HttpHeaders.RETRY_AFTER))
				.andExpect(jsonPath("$.type").value("/problems/busy"));
			other.rollback();
		}
		this.trees
			.ask(post("/api/v1/trees/" + filed.tree() + "/measurements")
				.content(TestTrees.measurement(120, "2026-06-02")), this.people.volunteer("heldland"))
			.andExpect(status().isCreated());
	}

	private Connection holdHead(String county) throws SQLException {
		Connection connection = this.dataSource.getConnection();
		connection.setAutoCommit(false);
		try (Statement statement = connection.createStatement()) {
			statement.execute("select from county_head where county = '" + county + "' for no key update");
		}
		return connection;
	}

}

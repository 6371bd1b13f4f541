package county.bigtree.registry.health;

import county.bigtree.registry.RegistryTest;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.jdbc.DataSourceBuilder;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.json.JsonCompareMode;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

@RegistryTest
class HealthIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private JdbcClient jdbc;

	@Test
	void livesAndIsReady() throws Exception {
		this.mvc.perform(get("/healthz"))
			.andExpect(status().isOk())
			.andExpect(content().json("{\"status\": \"up\"}", JsonCompareMode.STRICT));
		this.mvc.perform(get("/readyz"))
			.andExpect(status().isOk())
			.andExpect(content().json(
					"{\"status\": \"ready\", \"database\": \"reachable\", \"migrations\": \"done\", \"notices\": \"off\"}",
					JsonCompareMode.STRICT));
	}

	@Test
	void isNotReadyWithoutItsDatabase() throws Exception {
		JdbcClient nowhere = JdbcClient.create(DataSourceBuilder.create()
			.type(org.springframework.jdbc.datasource.DriverManagerDataSource.class)
			.url("jdbc:postgresql://127.0.0.1:1/nowhere")
			.build());
		assertThat(new CheckReadiness(nowhere).check()).isEqualTo(new Readiness(false, false));
		assertThat(new CheckReadiness(this.jdbc).check().isReady()).isTrue();
	}

}

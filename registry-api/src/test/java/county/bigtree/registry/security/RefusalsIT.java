package county.bigtree.registry.security;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * What roles don't allow is refused, and the log says to whom (OWASP ASVS 4.0.3, 7.1.3
 * and 7.2.2).
 */
@RegistryTest
@ExtendWith(OutputCaptureExtension.class)
class RefusalsIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestPeople people;

	@Test
	void areNotedWithAccountMethodAndPatternAndNothingThatWasSent(CapturedOutput output) throws Exception {
		TestPerson volunteer = this.people.volunteer("larkmere");
		this.mvc
			.perform(get("/api/v1/counties/larkmere/queue").param("cursor", "zqnoted")
				.header("Authorization", volunteer.bearer()))
			.andExpect(status().isForbidden());
		assertThat(output.getAll())
			.contains("Refused to account %s: GET /api/v1/counties/{county}/queue".formatted(volunteer.id()))
			.doesNotContain("zqnoted", volunteer.bearer(), volunteer.email());
	}

	@Test
	void areNotedWhereOnlyTheUseCaseKnows(CapturedOutput output) throws Exception {
		TestPerson coordinator = this.people.coordinator("larkmere");
		this.mvc
			.perform(get("/api/v1/people").param("county", "elsewhere").header("Authorization", coordinator.bearer()))
			.andExpect(status().isForbidden());
		assertThat(output.getAll()).contains("Refused to account %s: GET /api/v1/people".formatted(coordinator.id()));
	}

}

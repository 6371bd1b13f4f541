package county.bigtree.registry.people;

import county.bigtree.registry.RegistryTest;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.test.web.servlet.MockMvc;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

@RegistryTest
class AccountsIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestPeople people;

	@Test
	void sessionShowsTheRolesHeld() throws Exception {
		TestPerson person = this.people.verifier("larkmere");
		this.mvc.perform(get("/api/v1/session").header(HttpHeaders.AUTHORIZATION, person.bearer()))
			.andExpect(status().isOk())
			.andExpect(content().json("""
					{"person": "%s", "creditName": "%s", "administrator": false,
					 "roles": [{"county": "larkmere", "role": "verifier"}]}""".formatted(person.id(),
					person.creditName()), org.springframework.test.json.JsonCompareMode.STRICT));
	}

}

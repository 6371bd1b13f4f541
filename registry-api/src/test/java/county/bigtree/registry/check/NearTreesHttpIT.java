package county.bigtree.registry.check;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.ResultMatcher;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Whether a tree is on the books already: nominations that wait, and trees over the
 * county line. Who may know what is common practice of registers that keep places
 * private, no source.
 */
@RegistryTest
class NearTreesHttpIT {

	private static final String MAY_BE = "A tree of the same species may be on the books here already";

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Test
	void aVolunteerLearnsOfATreeThatWaitsNoMoreThanOfAnAcceptedOne() throws Exception {
		this.trees.county("waitton", "NTA");
		String first = nominate("waitton", this.people.volunteer("waitton"), 40.1, "nearby").andExpect(asked(false))
			.andReturn()
			.getResponse()
			.getContentAsString();
		String waiting = told("waitton");
		this.trees
			.signOff(JsonPath.read(first, "$.measurement.id"), this.people.verifier("waitton"),
					"{\"verdict\": \"confirmed\"}")
			.andExpect(status().isCreated());
		assertThat(told("waitton")).isEqualTo(waiting).contains(MAY_BE);
	}

	@Test
	void coordinatorsAndWhoNominatedItAreToldWhichTreeWaits() throws Exception {
		this.trees.county("knowton", "NTB");
		TestPerson volunteer = this.people.volunteer("knowton");
		nominate("knowton", volunteer, 40.1, "county").andExpect(asked(false));
		for (TestPerson person : new TestPerson[] { volunteer, this.people.coordinator("knowton") }) {
			nominate("knowton", person, 40.1, "county").andExpect(asked(true))
				.andExpect(jsonPath("$.checks[0].figures.tree").value("NTB-0001"))
				.andExpect(jsonPath("$.checks[0].detail").value(containsString("waits for a decision")));
		}
		nominate("knowton", this.people.volunteer("knowton"), 40.1, "county").andExpect(asked(false));
	}

	@Test
	void aTreeWhoseNominationWasDeclinedIsNotMeant() throws Exception {
		this.trees.county("declineton", "NTC");
		String filed = nominate("declineton", this.people.volunteer("declineton"), 40.1, "nearby")
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
		this.trees
			.decide("/api/v1/nominations/" + JsonPath.<String>read(filed, "$.id"), "/moves",
					"{\"move\": \"decline\", \"reason\": \"a shrub\"}", this.people.coordinator("declineton"))
			.andExpect(status().is2xxSuccessful());
		nominate("declineton", this.people.volunteer("declineton"), 40.1, "nearby").andExpect(asked(false));
	}

	/** The species' names are invented, so that no other test files trees of them. */
	@Test
	void aTreeOfASpeciesThatWasFoldedIntoItIsMeant() throws Exception {
		this.trees.county("bendton", "NTW");
		TestPerson administrator = this.people.administrator();
		for (String epithet : new String[] { "prima", "secunda", "tertia" }) {
			this.trees.ask(post("/api/v1/species").content("""
					{"scientificName": "Vicinia %1$s", "authority": "Probator", "source": "Flora of Nowhere, 3rd ed.",
					 "commonName": "%1$s neighbor"}""".formatted(epithet)), this.people.coordinator("bendton"))
				.andExpect(status().isCreated());
		}
		file("vicinia-prima", 40.1).andExpect(asked(false));
		file("vicinia-prima", 40.5).andExpect(asked(false));
		file("vicinia-tertia", 40.5).andExpect(asked(false));
		fold("vicinia-prima", "vicinia-secunda", administrator);
		fold("vicinia-secunda", "vicinia-tertia", administrator);
		file("vicinia-tertia", 40.1).andExpect(asked(true));
	}

	/** The line runs at 86 degrees west; the place lies a hundred metres west of it. */
	@Test
	void treesOverTheLineAreMeantWhereItIsNear() throws Exception {
		bounded("westline", "NTD", -87, -86);
		bounded("eastline", "NTE", -86, -85);
		TestPerson both = this.people.coordinator("westline", "eastline");
		nominate("westline", this.people.volunteer("westline"), 40.5, -86.001, "exact").andExpect(asked(false));
		for (double latitude : new double[] { 40.6, 40.7, 40.8 }) {
			nominate("westline", this.people.volunteer("westline"), latitude, -86.001, "county")
				.andExpect(asked(false));
		}
		nominate("eastline", this.people.volunteer("eastline"), 40.5, -86.001, "exact", "outside-county")
			.andExpect(asked(true))
			.andExpect(jsonPath("$.checks[0].detail").value(containsString(MAY_BE)))
			.andExpect(content().string(not(containsString("NTD-0001"))));
		nominate("eastline", this.people.volunteer("eastline"), 40.7, -86.001, "county", "outside-county")
			.andExpect(asked(false));
		nominate("eastline", this.people.coordinator("eastline"), 40.8, -86.001, "county", "outside-county")
			.andExpect(asked(false));
		nominate("eastline", both, 40.6, -86.001, "county", "outside-county").andExpect(asked(true))
			.andExpect(jsonPath("$.checks[0].figures.tree").value("NTD-0002"));
	}

	private void fold(String species, String into, TestPerson administrator) throws Exception {
		this.trees
			.ask(post("/api/v1/species/" + species + "/fold")
				.content("{\"into\": \"%s\", \"reason\": \"one species after all\"}".formatted(into)), administrator)
			.andExpect(status().isOk());
	}

	private ResultActions file(String species, double latitude) throws Exception {
		return nominate("bendton", this.people.volunteer("bendton"), species, latitude, -86.2, "nearby");
	}

	private String told(String county) throws Exception {
		String answer = nominate(county, this.people.volunteer(county), 40.1, "nearby").andExpect(asked(true))
			.andReturn()
			.getResponse()
			.getContentAsString();
		return JsonPath.read(answer, "$.checks").toString();
	}

	private static ResultMatcher asked(boolean asked) {
		return (result) -> {
			status().is(asked ? 422 : 201).match(result);
			if (asked) {
				jsonPath("$.checks[0].code").value("likely-same-tree").match(result);
			}
		};
	}

	private ResultActions nominate(String county, TestPerson filer, double latitude, String shown) throws Exception {
		return nominate(county, filer, latitude, -86.2, shown);
	}

	private ResultActions nominate(String county, TestPerson filer, double latitude, double longitude, String shown,
			String... confirmed) throws Exception {
		return nominate(county, filer, "quercus-alba", latitude, longitude, shown, confirmed);
	}

	private ResultActions nominate(String county, TestPerson filer, String species, double latitude, double longitude,
			String shown, String... confirmed) throws Exception {
		String checks = (confirmed.length == 0) ? "" : "\"" + String.join("\", \"", confirmed) + "\"";
		return this.trees.ask(post("/api/v1/counties/" + county + "/nominations").content("""
				{"species": "%s", "location": {"latitude": %s, "longitude": %s, "accuracyMetres": 8},
				 "access": "public", "visibility": "%s", "measurement": {"measuredOn": "2026-05-02",
				 "girth": {"method": "tape", "girth": {"value": 100, "unit": "in"}},
				 "height": {"method": "pole", "height": {"value": 65, "unit": "ft"}},
				 "crown": {"method": "axes", "axes": [{"value": 60, "unit": "ft"}, {"value": 60, "unit": "ft"}]},
				 "confirmedChecks": [%s]}}""".formatted(species, latitude, longitude, shown, checks)), filer);
	}

	private void bounded(String county, String prefix, int west, int east) throws Exception {
		this.trees
			.ask(post("/api/v1/counties").content(
					"""
							{"key": "%1$s", "name": "%1$s", "state": "Nowhere", "timeZone": "America/New_York", "tagPrefix": "%2$s",
							 "boundary": {"type": "Polygon", "coordinates":
							   [[[%3$d, 40], [%4$d, 40], [%4$d, 41], [%3$d, 41], [%3$d, 40]]]}}"""
						.formatted(county, prefix, west, east)),
					this.people.administrator())
			.andExpect(status().isCreated());
	}

}

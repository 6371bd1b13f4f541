package county.bigtree.registry.county;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.patch;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * What may change of a county, and what is found in it.
 */
@RegistryTest
class CountyHttpIT {

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Test
	void changesItsNameAndBoundaryAndKeepsTheRest() throws Exception {
		this.trees.county("patchland", "PAA");
		TestPerson coordinator = this.people.coordinator("patchland");
		this.trees.ask(patch("/api/v1/counties/patchland").content("{\"name\": \"Patchland\"}"), coordinator)
			.andExpect(status().isPreconditionRequired());
		String tag = tag(coordinator);
		this.trees.ask(patch("/api/v1/counties/patchland").header(HttpHeaders.IF_MATCH, tag).content("""
				{"name": "Patchland", "boundary": {"type": "Polygon", "coordinates":
				  [[[-87, 40], [-86, 40], [-86, 41], [-87, 41], [-87, 40]]]}}"""), coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.name").value("Patchland"))
			.andExpect(jsonPath("$.state").value("Nowhere"))
			.andExpect(jsonPath("$.boundary.type").value("Polygon"));
		this.trees
			.ask(patch("/api/v1/counties/patchland").header(HttpHeaders.IF_MATCH, tag).content("{\"name\": \"Late\"}"),
					coordinator)
			.andExpect(status().isPreconditionFailed())
			.andExpect(jsonPath("$.present.name").value("Patchland"));
		this.trees
			.ask(patch("/api/v1/counties/patchland").header(HttpHeaders.IF_MATCH, tag(coordinator))
				.content("{\"state\": \"Elsewhere\"}"), coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.boundary.type").value("Polygon"));
		this.trees
			.ask(patch("/api/v1/counties/patchland").header(HttpHeaders.IF_MATCH, tag(coordinator))
				.content("{\"boundary\": null}"), coordinator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.boundary").doesNotExist());
	}

	@Test
	void isForItsOwnCoordinatorToChange() throws Exception {
		this.trees.county("ownland", "PAB");
		this.trees.county("otherland", "PAC");
		this.trees
			.ask(patch("/api/v1/counties/ownland").header(HttpHeaders.IF_MATCH, "\"1-x\"")
				.content("{\"name\": \"Mine\"}"), this.people.coordinator("otherland"))
			.andExpect(status().isForbidden());
	}

	@Test
	void listsTheSpeciesOfWhichItRanksTrees() throws Exception {
		this.trees.county("oakland-park", "PAD");
		TestPerson verifier = this.people.verifier("oakland-park");
		this.trees.ask(get("/api/v1/species").param("county", "oakland-park"), verifier)
			.andExpect(jsonPath("$.items.length()").value(0));
		this.trees.standing("oakland-park", 100, "2026-05-02");
		this.trees.ask(get("/api/v1/species").param("county", "oakland-park").param("query", "oak"), verifier)
			.andExpect(jsonPath("$.items.length()").value(1))
			.andExpect(jsonPath("$.items[0].key").value("quercus-alba"));
	}

	@Test
	void isComparedWithOnlyForASpeciesThatIsOne() throws Exception {
		this.trees.county("compareland", "PAE");
		this.trees
			.ask(post("/api/v1/measuring/points").content(
					"{\"county\": \"compareland\", \"species\": \"quercus-nulla\", " + TestTrees.readings(100) + "}"),
					this.people.volunteer("compareland"))
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/species"));
	}

	@Test
	void namesWhatIsMissingFromItsRules() throws Exception {
		this.trees.county("ruleland", "PAF");
		this.trees
			.ask(post("/api/v1/counties/ruleland/rulebooks")
				.content("{\"effectiveOn\": \"2026-01-01\", \"tieRule\": {}}"), this.people.coordinator("ruleland"))
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/tieRule/kind"));
		this.trees
			.ask(post("/api/v1/counties").content(
					"""
							{"key": "undated", "name": "Undated", "state": "Nowhere", "timeZone": "America/New_York", "tagPrefix": "PAG",
							 "rulebook": {"requiredSignOffs": 2}}"""),
					this.people.administrator())
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/rulebook/effectiveOn"));
	}

	private String tag(TestPerson person) throws Exception {
		return String.valueOf(this.trees.ask(get("/api/v1/counties/patchland"), person)
			.andReturn()
			.getResponse()
			.getHeader(HttpHeaders.ETAG));
	}

}

package county.bigtree.registry.species.web;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Species added to the catalogue and folded together. Their names are invented, so that
 * no other test's catalogue changes.
 */
@RegistryTest
class SpeciesDecisionsIT {

	private static final String ADDED = """
			{"scientificName": "%s", "authority": "Probator", "source": "Flora of Nowhere, 3rd ed.",
			 "commonName": "%s", "synonyms": ["%s"], "localNames": ["%s"]}""";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Test
	void anAddedSpeciesIsFoundByAllItsNamesAndCanBeNominated() throws Exception {
		this.trees.county("addland", "SPA");
		TestPerson coordinator = this.people.coordinator("addland");
		this.trees
			.ask(post("/api/v1/species")
				.content(ADDED.formatted("Probatio × nova var. minor", "trial oak", "Probatio vetus", "grey trial")),
					coordinator)
			.andExpect(status().isCreated())
			.andExpect(jsonPath("$.key").value("probatio-nova-var-minor"))
			.andExpect(jsonPath("$.hybrid").value(true));
		for (String name : new String[] { "Probatio vetus", "grey trial", "trial oak", "probatio nova" }) {
			this.mvc.perform(get("/api/v1/species").param("query", name))
				.andExpect(jsonPath("$.items[0].key").value("probatio-nova-var-minor"));
		}
		this.trees.nominate("addland", this.people.volunteer("addland"), "probatio-nova-var-minor",
				TestTrees.measurement(100, "2026-05-02"));
		this.trees
			.ask(post("/api/v1/species")
				.content(ADDED.formatted("Probatio x nova var. minor", "again", "Probatio alia", "again")), coordinator)
			.andExpect(status().isConflict())
			.andExpect(jsonPath("$.species").value("probatio-nova-var-minor"));
		this.trees.ask(post("/api/v1/species").content(ADDED.formatted("oak", "oak", "oaks", "oaken")), coordinator)
			.andExpect(status().isUnprocessableContent());
		this.trees
			.ask(post("/api/v1/species").content(ADDED.formatted("Probatio mala", "a", "Probatio malior", "b")),
					this.people.verifier("addland"))
			.andExpect(status().isForbidden());
	}

	@Test
	void theJournalTellsWhoAddedASpecies() throws Exception {
		this.trees.county("tellspecies", "SPC");
		TestPerson coordinator = this.people.coordinator("tellspecies");
		this.trees
			.ask(post("/api/v1/species")
				.content(ADDED.formatted("Narratio certa", "told tree", "Narratio vera", "told")), coordinator)
			.andExpect(status().isCreated());
		this.trees.ask(get("/api/v1/counties/tellspecies/journal"), coordinator)
			.andExpect(jsonPath("$.items[0].kind").value("species-added"))
			.andExpect(jsonPath("$.items[0].who").value(coordinator.creditName()));
	}

	@Test
	void aFoldedSpeciesIsRankedUnderTheOther() throws Exception {
		this.trees.county("foldland", "SPB");
		TestPerson coordinator = this.people.coordinator("foldland");
		for (String epithet : new String[] { "lata", "stricta" }) {
			this.trees
				.ask(post("/api/v1/species").content(ADDED.formatted("Plicatio " + epithet, epithet + " fold",
						"Plicatio " + epithet + "issima", epithet)), coordinator)
				.andExpect(status().isCreated());
		}
		TestTrees.Filed wide = this.trees.nominate("foldland", this.people.volunteer("foldland"), "plicatio-lata",
				TestTrees.measurement(100, "2024-05-02"));
		TestTrees.Filed narrow = this.trees.nominate("foldland", this.people.volunteer("foldland"), "plicatio-stricta",
				TestTrees.measurement(120, "2024-05-02"));
		TestPerson verifier = this.people.verifier("foldland");
		this.trees.signOff(wide.measurement(), verifier, "{\"verdict\": \"confirmed\"}")
			.andExpect(status().isCreated());
		this.trees.signOff(narrow.measurement(), verifier, "{\"verdict\": \"confirmed\"}")
			.andExpect(status().isCreated());
		String fold = "{\"into\": \"plicatio-lata\", \"reason\": \"one species after all\"}";
		this.trees.ask(post("/api/v1/species/plicatio-stricta/fold").content(fold), coordinator)
			.andExpect(status().isForbidden());
		TestPerson administrator = this.people.administrator();
		this.trees.ask(post("/api/v1/species/plicatio-stricta/fold").content(fold), administrator)
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.foldedInto").value("plicatio-lata"));
		this.mvc.perform(get("/api/v1/counties/foldland/species/plicatio-lata/standing"))
			.andExpect(jsonPath("$.items.length()").value(2))
			.andExpect(jsonPath("$.items[0].tree").value(narrow.tree()));
		this.mvc.perform(get("/api/v1/counties/foldland/species/plicatio-lata/titles"))
			.andExpect(jsonPath("$.items[0].began").value("folded"))
			.andExpect(jsonPath("$.items[1].ended").value("overtaken"));
		this.mvc.perform(get("/api/v1/counties/foldland/species/plicatio-stricta/standing"))
			.andExpect(jsonPath("$.items.length()").value(0));
		this.trees.ask(post("/api/v1/species/plicatio-stricta/fold").content(fold), administrator)
			.andExpect(status().isConflict());
		this.trees
			.ask(post("/api/v1/species/plicatio-lata/fold")
				.content("{\"into\": \"plicatio-stricta\", \"reason\": \"in a circle\"}"), administrator)
			.andExpect(status().isConflict());
	}

}

package county.bigtree.registry.records;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * A folder holds what the asker may see elsewhere, letter for letter, and says what it
 * leaves out, whether or not there is any of it.
 */
@RegistryTest
class RecordsHttpIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Test
	void aTreesFolderHoldsWhatTheAskerMaySee() throws Exception {
		this.trees.county("recordland", "RCA");
		TestTrees.Filed filed = this.trees.standing("recordland", 100, "2024-05-02");
		TestPerson coordinator = this.people.coordinator("recordland");
		this.trees.ask(post("/api/v1/visits").content(
				"{\"tree\": \"%s\", \"purpose\": \"doubt\", \"notes\": \"the dog bites\"}".formatted(filed.tree())),
				this.people.verifier("recordland"))
			.andExpect(status().isCreated());
		Map<String, String> all = folder("tree=RCA-0001", coordinator);
		assertThat(all).containsKeys("trees/RCA-0001/tree.json", "trees/RCA-0001/scores.json",
				"trees/RCA-0001/measurements.json", "trees/RCA-0001/story.json",
				"trees/RCA-0001/nominations/" + filed.nomination() + ".json");
		assertThat(String.join("", all.values())).contains("the dog bites");
		assertThat(withheld(all)).isEmpty();
		Object inFolder = JsonPath.parse(all.get("trees/RCA-0001/nominations/" + filed.nomination() + ".json")).json();
		Object atItsAddress = JsonPath
			.parse(this.trees.ask(get("/api/v1/nominations/" + filed.nomination()), coordinator)
				.andReturn()
				.getResponse()
				.getContentAsString())
			.json();
		assertThat(inFolder).isEqualTo(atItsAddress);
		Map<String, String> shown = folder("tree=" + filed.tree(), null);
		assertThat(shown).containsOnlyKeys("index.json", "trees/RCA-0001/tree.json", "trees/RCA-0001/scores.json",
				"trees/RCA-0001/measurements.json", "trees/RCA-0001/photos.json", "trees/RCA-0001/story.json");
		assertThat(String.join("", shown.values())).doesNotContain("the dog bites", "A. Finder",
				"\"latitude\" : 40.1,");
		assertThat(withheld(shown)).contains("nominations", "visits", "sign-offs", "condition-reports", "relocations",
				"older record");
		Map<String, String> nominators = folder("tree=RCA-0001", filed.filer());
		assertThat(nominators).containsKey("trees/RCA-0001/nominations/" + filed.nomination() + ".json");
		assertThat(withheld(nominators)).contains("visits", "sign-offs");
	}

	@Test
	void whatIsWithheldDoesNotTellWhetherThereIsAny() throws Exception {
		this.trees.county("recordeven", "RCB");
		this.trees.standing("recordeven", 100, "2024-05-02");
		TestTrees.Filed visited = this.trees.standing("recordeven", 110, "2024-05-02");
		this.trees
			.ask(post("/api/v1/visits").content("{\"tree\": \"%s\", \"purpose\": \"doubt\"}".formatted(visited.tree())),
					this.people.verifier("recordeven"))
			.andExpect(status().isCreated());
		TestPerson volunteer = this.people.volunteer("recordeven");
		assertThat(withheld(folder("tree=RCB-0001", null))).isEqualTo(withheld(folder("tree=RCB-0002", null)));
		assertThat(withheld(folder("tree=RCB-0001", volunteer)))
			.isEqualTo(withheld(folder("tree=RCB-0002", volunteer)));
		ask("tree=RCB-0009", null).andExpect(status().isNotFound());
	}

	@Test
	void aSpeciesFolderHoldsItsTrees() throws Exception {
		this.trees.county("recordbook", "RCC");
		this.trees.standing("recordbook", 100, "2024-05-02");
		this.trees.standing("recordbook", 110, "2024-05-02");
		TestTrees.Filed waiting = this.trees.nominate("recordbook", this.people.volunteer("recordbook"), "quercus-alba",
				TestTrees.measurement(120, "2024-05-02"));
		Map<String, String> shown = folder("county=recordbook&species=quercus-alba", null);
		assertThat(shown).containsKeys("standing.json", "titles.json", "story.json", "trees/RCC-0001/tree.json",
				"trees/RCC-0002/tree.json");
		assertThat(String.join("", shown.values())).doesNotContain("RCC-0003", waiting.tree());
		assertThat(folder("county=recordbook&species=quercus-alba", this.people.verifier("recordbook")))
			.containsKey("trees/RCC-0003/tree.json");
	}

	@Test
	void aPersonsFolderIsForThemselvesAndForCoordinators() throws Exception {
		this.trees.county("recordperson", "RCD");
		TestTrees.Filed filed = this.trees.standing("recordperson", 100, "2024-05-02");
		String person = "person=" + filed.filer().id();
		assertThat(folder(person, filed.filer())).containsKeys("nominations/" + filed.nomination() + ".json",
				"measurements/" + filed.measurement() + ".json");
		assertThat(folder(person, this.people.coordinator("recordperson")))
			.containsKey("nominations/" + filed.nomination() + ".json");
		Map<String, String> elsewhere = folder(person, this.people.coordinator("recordelse"));
		assertThat(elsewhere).containsOnlyKeys("index.json");
		assertThat(withheld(elsewhere)).contains("nominations", "measurements");
		ask(person, this.people.verifier("recordperson")).andExpect(status().isNotFound());
		ask(person, null).andExpect(status().isNotFound());
	}

	@Test
	void aFolderOfDaysHoldsTheJournalForCoordinatorsAlone() throws Exception {
		this.trees.county("recorddays", "RCE");
		this.trees.standing("recorddays", 100, "2024-05-02");
		LocalDate today = LocalDate.now(ZoneOffset.UTC);
		String days = "county=recorddays&from=%s&to=%s";
		Map<String, String> whole = folder(days.formatted(today.minusDays(1), today.plusDays(1)),
				this.people.coordinator("recorddays"));
		assertThat(JsonPath.<List<String>>read(whole.get("journal.json"), "$.items[*].kind")).contains("signed-off");
		assertThat(whole).containsKeys("rulebooks.json", "trees/RCE-0001/tree.json");
		Map<String, String> earlier = folder(days.formatted(today.minusDays(9), today.minusDays(3)),
				this.people.coordinator("recorddays"));
		assertThat(earlier).containsOnlyKeys("index.json", "rulebooks.json", "journal.json");
		assertThat(JsonPath.<List<String>>read(earlier.get("journal.json"), "$.items")).isEmpty();
		Map<String, String> shown = folder(days.formatted(today.minusDays(1), today.plusDays(1)), null);
		assertThat(shown).doesNotContainKey("journal.json").containsKey("trees/RCE-0001/tree.json");
		assertThat(withheld(shown)).contains("journal");
	}

	@Test
	void asksForOneThing() throws Exception {
		this.trees.county("recordodd", "RCF");
		for (String query : List.of("", "county=recordodd", "tree=RCF-0001&county=recordodd", "species=quercus-alba",
				"county=recordodd&from=2026-01-01", "from=2026-01-01&to=2026-01-02", "person=me")) {
			ask(query, null).andExpect(status().isBadRequest());
		}
		ask("county=recordodd&from=2026-01-02&to=2026-01-01", null).andExpect(status().isUnprocessableContent());
		ask("county=recordnone&from=2026-01-01&to=2026-01-02", null).andExpect(status().isNotFound());
	}

	private static List<String> withheld(Map<String, String> folder) {
		return new ArrayList<>(JsonPath.<List<String>>read(folder.get("index.json"), "$.withheld[*].what"));
	}

	private Map<String, String> folder(String query, @Nullable TestPerson asker) throws Exception {
		byte[] bytes = ask(query, asker).andExpect(status().isOk()).andReturn().getResponse().getContentAsByteArray();
		Map<String, String> files = new TreeMap<>();
		try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes))) {
			for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
				files.put(entry.getName(), new String(zip.readAllBytes(), StandardCharsets.UTF_8));
			}
		}
		return files;
	}

	private ResultActions ask(String query, @Nullable TestPerson asker) throws Exception {
		String address = "/api/v1/records?" + query;
		return (asker != null) ? this.trees.ask(get(address), asker) : this.mvc.perform(get(address));
	}

}

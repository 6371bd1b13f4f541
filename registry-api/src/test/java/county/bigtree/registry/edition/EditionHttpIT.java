package county.bigtree.registry.edition;

import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HexFormat;
import java.util.UUID;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.paper.Pdf;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Editions from their announcement to their errata. No outside source: what an edition is
 * for is common practice; CSV is read by a library (RFC 4180), digests are SHA-256 (FIPS
 * 180-4).
 */
@RegistryTest
class EditionHttpIT {

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private MockMvc mvc;

	@Autowired
	private MakeUpList making;

	@Test
	void publishesTheStandingsOfItsDayForGood() throws Exception {
		this.trees.county("editionland", "EDA");
		TestPerson coordinator = this.people.coordinator("editionland");
		TestTrees.Filed first = this.trees.standing("editionland", 100, "2024-05-02");
		this.trees.standing("editionland", 140, "2025-05-02");
		String edition = announce("editionland", "2024", "2024-12-31", coordinator);
		publish(edition, "?dryRun=true", coordinator).andExpect(status().isOk());
		this.mvc.perform(get(edition))
			.andExpect(jsonPath("$.publication").isEmpty())
			.andExpect(jsonPath("$.name").value("2024"))
			.andExpect(jsonPath("$.timeZone").value("America/New_York"));
		this.mvc.perform(get(edition + "/list")).andExpect(status().isNotFound());
		publish(edition, "", coordinator).andExpect(status().isOk());
		String published = read(edition);
		String journal = content(
				this.trees.ask(get("/api/v1/counties/editionland/journal"), coordinator).andExpect(status().isOk()));
		assertThat(JsonPath.<String>read(journal, "$.items[0].kind")).isEqualTo("edition-published");
		assertThat(JsonPath.<Integer>read(published, "$.publication.headSeq"))
			.isEqualTo(JsonPath.<Integer>read(journal, "$.items[1].seq"));
		this.mvc.perform(get(edition + "/list"))
			.andExpect(jsonPath("$.asPublished").value(true))
			.andExpect(jsonPath("$.list.species.length()").value(1))
			.andExpect(jsonPath("$.list.species[0].scientificName").value("Quercus alba"))
			.andExpect(jsonPath("$.list.species[0].trees.length()").value(1))
			.andExpect(jsonPath("$.list.species[0].trees[0].tree").value(first.tree()))
			.andExpect(jsonPath("$.list.species[0].trees[0].tag").value("EDA-0001"))
			.andExpect(jsonPath("$.list.species[0].trees[0].rank").value(1))
			.andExpect(jsonPath("$.list.species[0].trees[0].title").value("champion"));
		MockHttpServletResponse csv = csv(edition);
		assertThat(csv.getHeader(HttpHeaders.CONTENT_DISPOSITION)).contains("\"editionland-2024.csv\"");
		assertThat(HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(csv.getContentAsByteArray())))
			.isEqualTo(JsonPath.read(published, "$.publication.csvSha256"));
		CSVRecord row = CSVFormat.RFC4180.builder()
			.setHeader()
			.get()
			.parse(new StringReader(csv.getContentAsString(StandardCharsets.UTF_8)))
			.getRecords()
			.get(0);
		assertThat(row.get("tag")).isEqualTo("EDA-0001");
		assertThat(row.get("girthInches")).isEqualTo("100.00");
		assertThat(row.get("journalHash")).isEqualTo(JsonPath.read(published, "$.publication.headHash"));
		byte[] pdf = this.mvc.perform(get(edition.replace("/api/v1/", "/exports/") + "/rankings.pdf"))
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsByteArray();
		assertThat(HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(pdf)))
			.isEqualTo(JsonPath.read(published, "$.publication.pdfSha256"));
		try (Pdf read = new Pdf(pdf)) {
			assertThat(read.isForEveryone().text()).contains("EDA-0001", "Quercus alba", row.get("journalHash"));
		}
		publish(edition, "", coordinator).andExpect(status().isConflict());
		this.trees.standing("editionland", 180, "2024-06-02");
		assertThat(csv(edition).getContentAsByteArray()).isEqualTo(csv.getContentAsByteArray());
	}

	@Test
	void waitsForTheEndOfItsDay() throws Exception {
		this.trees.county("editionwait", "EDB");
		TestPerson coordinator = this.people.coordinator("editionwait");
		String edition = announce("editionwait", "next", LocalDate.now().plusDays(2).toString(), coordinator);
		publish(edition, "", coordinator).andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.type").value("/problems/refused"));
		ask("/api/v1/counties/editionwait/editions", body("next", "2024-12-31"), coordinator)
			.andExpect(status().isConflict());
		ask("/api/v1/counties/editionwait/editions",
				"{\"name\": \"other\", \"filingsBy\": \"2024-12-31\", \"graceDays\": 10, \"closesOn\": \"2025-01-05\"}",
				coordinator)
			.andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.errors[0].pointer").value("#/closesOn"));
		ask(edition + "/errata", "{\"text\": \"Nothing yet.\"}", coordinator)
			.andExpect(status().isUnprocessableContent());
		this.trees.ask(post(edition + "/publication"), coordinator).andExpect(status().isPreconditionRequired());
	}

	@Test
	void printsWhatWasInTimeAndIsUndecidedAsPending() throws Exception {
		this.trees.county("editionpend", "EDC");
		TestPerson volunteer = this.people.volunteer("editionpend");
		TestTrees.Filed standing = this.trees.standing("editionpend", 100, "2024-05-02");
		this.trees.nominate("editionpend", volunteer, "quercus-alba", TestTrees.measurement(90, "2025-05-02"));
		ask("/api/v1/trees/" + standing.tree() + "/measurements", TestTrees.measurement(102, "2025-05-02"), volunteer)
			.andExpect(status().isCreated());
		LocalDate today = LocalDate.now(ZoneOffset.UTC);
		EditionList list = this.making.of(edition("editionpend", today));
		assertThat(list.pending()).extracting(EditionList.PendingFiling::kind)
			.containsExactly("nomination", "measurement");
		// Of what is on no books yet nothing is told but its species.
		assertThat(list.pending()).extracting(EditionList.PendingFiling::tag).containsExactly(null, "EDC-0001");
		assertThat(this.making.of(edition("editionpend", today.minusDays(5))).pending()).isEmpty();
	}

	private static Edition edition(String county, LocalDate filingsBy) {
		return new Edition(UUID.randomUUID(), county, "any", filingsBy, 1, LocalDate.now(ZoneOffset.UTC).minusDays(1),
				"America/Indiana/Indianapolis", Instant.EPOCH, null, 0, 1);
	}

	@Test
	void showsLessOnceAnOwnerWishesSo() throws Exception {
		this.trees.county("editionhide", "EDD");
		TestPerson coordinator = this.people.coordinator("editionhide");
		TestTrees.Filed tree = this.trees.standing("editionhide", 100, "2024-05-02");
		String edition = announce("editionhide", "2024", "2024-12-31", coordinator);
		publish(edition, "", coordinator).andExpect(status().isOk());
		String digest = JsonPath.read(read(edition), "$.publication.csvSha256");
		ask("/api/v1/trees/" + tree.tree() + "/owners", "{\"name\": \"C. Landholder\"}", coordinator)
			.andExpect(status().isCreated());
		this.mvc.perform(get(edition + "/list"))
			.andExpect(jsonPath("$.asPublished").value(false))
			.andExpect(jsonPath("$.list.species[0].trees[0].tag").isEmpty())
			.andExpect(jsonPath("$.list.species[0].trees[0].tree").isEmpty())
			.andExpect(jsonPath("$.list.species[0].trees[0].title").value("champion"));
		MockHttpServletResponse csv = csv(edition);
		assertThat(csv.getHeader(HttpHeaders.CONTENT_DISPOSITION)).contains("as-shown-today");
		assertThat(csv.getContentAsString()).doesNotContain("EDD-0001").contains("champion");
		assertThat(JsonPath.<String>read(read(edition), "$.publication.csvSha256")).isEqualTo(digest);
	}

	@Test
	void tellsWhatChangedSinceTheLastAndItsErrata() throws Exception {
		this.trees.county("editionnext", "EDE");
		TestPerson coordinator = this.people.coordinator("editionnext");
		String old = this.trees.standing("editionnext", 100, "2024-05-02").tree();
		String first = announce("editionnext", "2024", "2024-12-31", coordinator);
		publish(first, "", coordinator).andExpect(status().isOk());
		this.mvc.perform(get(first + "/changes"))
			.andExpect(jsonPath("$.since").isEmpty())
			.andExpect(jsonPath("$.species").isEmpty());
		String larger = this.trees.standing("editionnext", 140, "2025-05-02").tree();
		String second = announce("editionnext", "2025", "2025-12-31", coordinator);
		publish(second, "", coordinator).andExpect(status().isOk());
		this.mvc.perform(get(second + "/changes"))
			.andExpect(jsonPath("$.sinceName").value("2024"))
			.andExpect(jsonPath("$.species[0].trees.length()").value(2))
			.andExpect(jsonPath("$.species[0].trees[0].tree").value(larger))
			.andExpect(jsonPath("$.species[0].trees[0].rankBefore").isEmpty())
			.andExpect(jsonPath("$.species[0].trees[0].title").value("champion"))
			.andExpect(jsonPath("$.species[0].trees[0].why").value("signed-off"))
			.andExpect(jsonPath("$.species[0].trees[1].tree").value(old))
			.andExpect(jsonPath("$.species[0].trees[1].titleBefore").value("champion"))
			.andExpect(jsonPath("$.species[0].trees[1].title").isEmpty())
			.andExpect(jsonPath("$.species[0].trees[1].rank").value(2))
			.andExpect(jsonPath("$.species[0].trees[1].why").value("overtaken"));
		ask(second + "/errata", "{\"tree\": \"EDE-0002\", \"text\": \"The girth is 138 in.\"}", coordinator)
			.andExpect(status().isCreated());
		ask(second + "/errata", "{\"tree\": \"EDE-9999\", \"text\": \"?\"}", coordinator)
			.andExpect(status().isUnprocessableContent());
		this.mvc.perform(get(second + "/errata"))
			.andExpect(jsonPath("$.items.length()").value(1))
			.andExpect(jsonPath("$.items[0].tree").value(larger))
			.andExpect(jsonPath("$.items[0].text").value("The girth is 138 in."));
		this.mvc.perform(get("/api/v1/counties/editionnext/editions"))
			.andExpect(jsonPath("$.items[0].name").value("2025"))
			.andExpect(jsonPath("$.items[0].errata").value(1))
			.andExpect(jsonPath("$.items[1].name").value("2024"));
	}

	private String announce(String county, String name, String closesOn, TestPerson coordinator) throws Exception {
		return String.valueOf(ask("/api/v1/counties/" + county + "/editions", body(name, closesOn), coordinator)
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getHeader(HttpHeaders.LOCATION));
	}

	private static String body(String name, String closesOn) {
		return "{\"name\": \"%s\", \"filingsBy\": \"%2$s\", \"graceDays\": 0, \"closesOn\": \"%2$s\"}".formatted(name,
				closesOn);
	}

	private ResultActions publish(String edition, String query, TestPerson coordinator) throws Exception {
		return this.trees.decide(edition, "/publication" + query, "", coordinator);
	}

	private ResultActions ask(String address, String body, TestPerson person) throws Exception {
		return this.trees.ask(post(address).content(body), person);
	}

	private String read(String address) throws Exception {
		return content(this.mvc.perform(get(address)).andExpect(status().isOk()));
	}

	private static String content(ResultActions answer) throws Exception {
		return answer.andReturn().getResponse().getContentAsString(StandardCharsets.UTF_8);
	}

	private MockHttpServletResponse csv(String edition) throws Exception {
		return this.mvc.perform(get(edition.replace("/api/v1/", "/exports/") + "/rankings.csv"))
			.andExpect(status().isOk())
			.andReturn()
			.getResponse();
	}

}

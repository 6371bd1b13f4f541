package county.bigtree.registry.pages.desk;

import java.time.LocalDate;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.TestTrees.Filed;
import county.bigtree.registry.pages.TestPages;
import county.bigtree.registry.pages.TestPages.Sent;
import county.bigtree.registry.pages.TestPages.Visitor;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import county.bigtree.registry.photo.TestPhotos;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Visits by the pages: planned by a coordinator, made by a verifier.
 */
@RegistryTest
class VisitPagesIT {

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPages pages;

	@Autowired
	private TestPeople people;

	@Test
	void isPlannedMadeAndTold() throws Exception {
		this.trees.county("pagesvisit", "PGV");
		Filed filed = this.trees.standing("pagesvisit", 100, "2024-05-02");
		TestPerson verifier = this.people.verifier("pagesvisit");
		Visitor desk = this.pages.signIn(this.people.coordinator("pagesvisit"));
		String packet = desk
			.fill("/visits/plan?tree=PGV-0001&purpose=remeasure", "tree", "PGV-0001", "purpose", "remeasure",
					"verifier", verifier.id().toString(), "companion", "A neighbour", "byWhen",
					LocalDate.now().plusDays(30).toString(), "notes", "Ring at the <white> gate.")
			.taken()
			.replaceFirst("\\?.*", "");
		Visitor field = this.pages.signIn(verifier);
		assertThat(field.open("/visits")).contains("PGV-0001", "white oak", "Measure again", packet,
				"Ring at the &lt;white&gt; gate.");
		assertThat(field.open("/visits?order=walk&from=40.0,-86.0")).contains("<polyline", "PGV-0001", "40.1, -86.2");
		assertThat(field.open(packet)).contains("40.1, -86.2", "Open to the public", "A neighbour",
				"Tape around the stem", "To fill in on the spot", "No owner is on record");
		Sent future = field.fill(packet + "/outcome", "outcome", "seen", "visitedOn",
				LocalDate.now().plusDays(9).toString(), "do", "decide");
		assertThat(future.status()).isEqualTo(422);
		assertThat(future.page()).contains("href=\"#visitedOn\"");
		assertThat(field.open(
				field
					.fill(packet + "/outcome", "outcome", "seen", "visitedOn", LocalDate.now().minusDays(1).toString(),
							"remarks", "Standing.", "do", "decide")
					.taken()))
			.contains("It was seen, and not measured", "Standing.");
		assertThat(field.open("/visits")).contains("No visit waits for you");
		this.trees.ask(get("/api/v1/counties/pagesvisit/condition-reports"), this.people.coordinator("pagesvisit"))
			.andExpect(jsonPath("$.items[0].tree").value(filed.tree()))
			.andExpect(jsonPath("$.items[0].condition").value("upright"));
	}

	@Test
	void listsWhatIsAssignedUntilAVisitIsPlanned() throws Exception {
		this.trees.county("pagesassigned", "VAS");
		TestPerson verifier = this.people.verifier("pagesassigned");
		TestPerson coordinator = this.people.coordinator("pagesassigned");
		Filed filed = this.trees.nominate("pagesassigned", this.people.volunteer("pagesassigned"), "quercus-alba",
				TestTrees.measurement(100, "2024-05-02"));
		this.trees
			.decide("/api/v1/nominations/" + filed.nomination(), "/moves",
					"{\"move\": \"assign\", \"verifier\": \"%s\"}".formatted(verifier.id()), coordinator)
			.andExpect(status().isOk());
		this.trees.ask(get("/api/v1/assignments"), verifier)
			.andExpect(jsonPath("$.items.length()").value(1))
			.andExpect(jsonPath("$.items[0].kind").value("nomination"))
			.andExpect(jsonPath("$.items[0].measurement").value(filed.measurement()))
			.andExpect(jsonPath("$.items[0].visit").isEmpty());
		this.trees.ask(get("/api/v1/assignments"), coordinator).andExpect(jsonPath("$.items").isEmpty());
		Visitor field = this.pages.signIn(verifier);
		String signOff = "/measurements/" + filed.measurement() + "/sign-off";
		assertThat(field.open("/visits")).contains("Assigned to you, without a visit", signOff,
				"/visits/plan?tree=VAS-0001", "/desk/pagesassigned/photos");
		assertThat(field.open("/visits?order=walk")).contains("<polyline",
				"Assigned to you, without a visit: measured 2 May 2024", "/trees/VAS-0001");
		this.trees.ask(get("/visits.pdf?order=walk"), verifier).andExpect(status().isOk());
		field.fill("/visits/plan", "tree", "VAS-0001", "purpose", "sign-off").taken();
		this.trees.ask(get("/api/v1/assignments"), verifier).andExpect(jsonPath("$.items[0].visit").isNotEmpty());
		assertThat(field.open("/visits")).doesNotContain("without a visit");
		this.trees.signOff(filed.measurement(), verifier, "{\"verdict\": \"confirmed\"}")
			.andExpect(status().isCreated());
		this.trees.ask(get("/api/v1/assignments"), verifier).andExpect(jsonPath("$.items").isEmpty());
		remeasured(filed, verifier, coordinator);
	}

	private void remeasured(Filed filed, TestPerson verifier, TestPerson coordinator) throws Exception {
		String answer = this.trees
			.ask(post("/api/v1/trees/" + filed.tree() + "/measurements")
				.content(TestTrees.measurement(101, "2024-06-02")), filed.filer())
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
		String id = JsonPath.read(answer, "$.id");
		this.trees
			.decide("/api/v1/measurements/" + id, "/moves",
					"{\"move\": \"assign\", \"verifier\": \"%s\"}".formatted(verifier.id()), coordinator)
			.andExpect(status().isOk());
		this.trees.ask(get("/api/v1/assignments"), verifier)
			.andExpect(jsonPath("$.items[0].kind").value("remeasurement"))
			.andExpect(jsonPath("$.items[0].id").value(id));
	}

	@Test
	void takesAPassBackByThePage() throws Exception {
		this.trees.county("pagespassed", "VQZ");
		TestPerson verifier = this.people.verifier("pagespassed");
		Filed filed = this.trees.standing("pagespassed", 100, "2024-05-02");
		TestPhotos.sent(this.trees, "/api/v1/trees/" + filed.tree() + "/photos", filed.filer(), "text", "the oak");
		Visitor desk = this.pages.signIn(verifier);
		String waiting = desk.open("/desk/pagespassed/photos");
		String address = "/desk/pagespassed/photos/" + waiting.split("/desk/pagespassed/photos/")[1].split("\"")[0];
		desk.send(address, desk.hidden(waiting), "decision", "pass", "text", "the oak").taken();
		String passed = desk.open("/desk/pagespassed/photos?show=passed");
		assertThat(passed).contains("Take the pass back", address);
		assertThat(desk.send(address, desk.hidden(passed), "decision", "take-back", "show", "passed").status())
			.isEqualTo(422);
		desk.send(address, desk.hidden(passed), "decision", "take-back", "reason", "A face is in it.").taken();
		assertThat(desk.open("/desk/pagespassed/photos?show=passed")).contains("No photo has been passed.");
		assertThat(desk.open("/desk/pagespassed/photos")).contains(address);
	}

	@Test
	void isForItsVerifierAndTheCoordinatorAlone() throws Exception {
		this.trees.county("pagesguest", "PGU");
		this.trees.county("pageshome", "PGI");
		this.trees.standing("pagesguest", 100, "2024-05-02");
		TestPerson guest = this.people.verifier("pageshome");
		Visitor both = this.pages.signIn(this.people.coordinator("pagesguest", "pageshome"));
		String packet = both
			.fill("/visits/plan", "tree", "PGU-0001", "purpose", "doubt", "verifier", guest.id().toString())
			.taken()
			.replaceFirst("\\?.*", "");
		assertThat(this.pages.signIn(this.people.verifier("pagesguest")).look(packet).getStatus()).isEqualTo(404);
		Visitor visiting = this.pages.signIn(guest);
		assertThat(visiting.open(packet)).contains("Something on record is in doubt");
		assertThat(visiting
			.fill(packet + "/outcome", "outcome", "no-answer", "visitedOn", LocalDate.now().minusDays(1).toString(),
					"do", "decide")
			.taken()).isEqualTo("/");
		assertThat(visiting.look(packet).getStatus()).isEqualTo(404);
		assertThat(both.open("/visits?county=pagesguest")).contains("No visit is to be made");
		Sent nothing = both.fill("/visits/plan", "purpose", "doubt");
		assertThat(nothing.status()).isEqualTo(422);
		assertThat(nothing.page()).contains("href=\"#tree\"");
		Sent aimless = both.fill("/visits/plan", "tree", "PGU-0001");
		assertThat(aimless.status()).isEqualTo(422);
		assertThat(aimless.page()).contains("href=\"#purpose", "Fill this in.").doesNotContain("must not be null");
	}

}

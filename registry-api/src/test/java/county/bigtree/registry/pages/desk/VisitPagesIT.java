package county.bigtree.registry.pages.desk;

import java.time.LocalDate;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.TestTrees.Filed;
import county.bigtree.registry.pages.TestPages;
import county.bigtree.registry.pages.TestPages.Sent;
import county.bigtree.registry.pages.TestPages.Visitor;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;

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
	}

}

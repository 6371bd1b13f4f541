package county.bigtree.registry.pages.desk;

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
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * From a filing to a champion by the pages alone: assigned, visited, corrected, ranked.
 */
@RegistryTest
class SignOffPagesIT {

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPages pages;

	@Autowired
	private TestPeople people;

	@Test
	void leadsFromAFilingToAChampion() throws Exception {
		this.trees.county("pagesjourney", "PGJ");
		Filed filed = this.trees.nominate("pagesjourney", this.people.volunteer("pagesjourney"), "quercus-alba",
				TestTrees.measurement(100, "2024-05-02"));
		TestPerson verifier = this.people.verifier("pagesjourney");
		Visitor desk = this.pages.signIn(this.people.coordinator("pagesjourney"));
		desk.fill("/desk/pagesjourney/nominations/" + filed.nomination(), "move", "assign", "verifier",
				verifier.id().toString(), "do", "decide")
			.taken();
		String packet = desk
			.fill("/visits/plan", "tree", "PGJ-0001", "purpose", "sign-off", "verifier", verifier.id().toString())
			.taken()
			.replaceFirst("\\?.*", "");
		Visitor field = this.pages.signIn(verifier);
		String page = "/measurements/" + filed.measurement() + "/sign-off";
		assertThat(field.open(packet)).contains(page);
		assertThat(field.open(page)).contains("Filed", "Tape around the stem", "I stood at the tree");
		Sent outside = field.fill(page, own("confirmed", "120", "look"));
		assertThat(outside.status()).isEqualTo(422);
		assertThat(outside.page()).contains("differs", "+20 in", "E_n", "choose corrected or not-confirmed",
				"value=\"120\"");
		Sent looked = field.fill(page, own("corrected", "120", "look"));
		assertThat(looked.status()).as(looked.page()).isEqualTo(200);
		assertThat(looked.page()).contains("differs", "+20 in", "PGJ-0001 would become champion of white oak",
				"210.00 points");
		this.trees.oaks("pagesjourney").andExpect(jsonPath("$.items.length()").value(0));
		String given = field.send(page, field.hidden(looked.page()), own("corrected", "120", "sign")).taken();
		assertThat(field.open(given)).contains("verifier&#39;s figures used", "differs", "I stood at the tree");
		this.trees.oaks("pagesjourney")
			.andExpect(jsonPath("$.items[0].title").value("champion"))
			.andExpect(jsonPath("$.items[0].points").value(210.0));
		assertThat(desk.open("/counties/pagesjourney/species/quercus-alba")).contains("story");
	}

	@Test
	void asksForAVerdictAndKeepsTheMethodChosen() throws Exception {
		this.trees.county("pagesverdict", "PQV");
		Filed filed = this.trees.nominate("pagesverdict", this.people.volunteer("pagesverdict"), "quercus-alba",
				TestTrees.measurement(100, "2024-05-02"));
		Visitor field = this.pages.signIn(this.people.verifier("pagesverdict"));
		String page = "/measurements/" + filed.measurement() + "/sign-off";
		Sent chosen = field.fill(page, "go", "choose", "girth", "diameter", "remarks", "by calipers");
		assertThat(chosen.status()).isEqualTo(200);
		assertThat(chosen.page()).contains("girth.diameters.1", "by calipers");
		Sent silent = field.fill(page, "do", "sign");
		assertThat(silent.status()).isEqualTo(422);
		assertThat(silent.page()).contains("Choose a verdict.");
		Sent odd = field.fill(page, "verdict", "confirmed", "girth", "tape", "girth.girth", "about", "do", "look");
		assertThat(odd.status()).isEqualTo(422);
		assertThat(odd.page()).contains("href=\"#girth.girth\"");
	}

	@Test
	void isGivenByNobodyWhoFiledIt() throws Exception {
		this.trees.county("pagesown", "PGN");
		TestPerson verifier = this.people.verifier("pagesown");
		Filed filed = this.trees.nominate("pagesown", verifier, "quercus-alba",
				TestTrees.measurement(100, "2024-05-02"));
		Visitor own = this.pages.signIn(verifier);
		Sent sent = own.fill("/measurements/" + filed.measurement() + "/sign-off", "verdict", "confirmed", "do",
				"sign");
		assertThat(sent.status()).isIn(403, 422);
		assertThat(sent.page()).contains("You can&#39;t sign off on a tree that you nominated");
		Visitor stranger = this.pages.signIn(this.people.volunteer("pagesown"));
		assertThat(stranger.look("/measurements/" + filed.measurement() + "/sign-off").getStatus()).isEqualTo(404);
	}

	@Test
	void saysWhichPhotosATitleStillAsksFor() throws Exception {
		this.trees.county("pagesphotos", "PGZ",
				"{\"effectiveOn\": \"1800-01-01\", \"oldestFilingMonths\": 1200, \"photosRequired\": 1}");
		Filed filed = this.trees.nominate("pagesphotos", this.people.volunteer("pagesphotos"), "quercus-alba",
				TestTrees.measurement(100, "2024-05-02"));
		TestPerson verifier = this.people.verifier("pagesphotos");
		Visitor field = this.pages.signIn(verifier);
		String page = "/measurements/" + filed.measurement() + "/sign-off";
		String asked = "asks for one photo of the tree";
		assertThat(field.open(page)).contains(asked, "none is passed and none waits")
			.doesNotContain("/desk/pagesphotos/photos");
		Visitor filer = this.pages.signIn(filed.filer());
		assertThat(filer.open("/nominations/" + filed.nomination())).contains(asked);
		assertThat(filer.open("/measurements/" + filed.measurement())).contains(asked);
		Sent refused = field.fill(page, "verdict", "confirmed", "do", "sign");
		assertThat(refused.status()).isEqualTo(422);
		assertThat(refused.page()).contains("1 photo of it that a verifier or coordinator has passed; 0 are");
		String photo = TestPhotos.sent(this.trees, "/api/v1/measurements/" + filed.measurement() + "/photos",
				filed.filer(), "text", "the whole oak");
		assertThat(field.open(page)).contains("one waits to be looked at", "/desk/pagesphotos/photos");
		this.trees.decide("/api/v1/photos/" + photo, "/decisions", "{\"decision\": \"pass\"}", verifier)
			.andExpect(status().isOk());
		assertThat(field.open(page)).doesNotContain(asked);
		field.fill(page, "verdict", "confirmed", "do", "sign").taken();
	}

	private static String[] own(String verdict, String girth, String button) {
		return new String[] { "verdict", verdict, "girth", "tape", "girth.girth", girth, "girth.girth.unit", "in",
				"height", "pole", "height.height", "80", "height.height.unit", "ft", "crown", "axes", "crown.axes.1",
				"40", "crown.axes.2", "40", "crown.axes.unit", "ft", "measuredOn", "2024-06-02", "measuredBy",
				"D. Verifier", "confirmedChecks", "odd-proportions", "confirmedChecks", "unit-slip", "confirmedChecks",
				"too-slender", "confirmedChecks", "near-buckling", "confirmedChecks", "biggest-by-far",
				"confirmedChecks", "girth-outgrew", "confirmedChecks", "beyond-species-limit", "declares",
				"I stood at the tree.", "do", button };
	}

}

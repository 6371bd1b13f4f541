package county.bigtree.registry.pages.paper;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.paper.Pdf;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Certificates, letters and the booklet of a county with three oaks: two share the title,
 * the third holds none.
 */
@RegistryTest
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class CertificateIT {

	private static final String COUNTY = "honourshire";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	private TestTrees.Filed champion;

	private TestPerson coordinator;

	private String owner;

	@BeforeAll
	void found() throws Exception {
		this.trees.county(COUNTY, "HNR");
		this.coordinator = this.people.coordinator(COUNTY);
		this.champion = this.trees.standing(COUNTY, 200, "2026-03-02");
		this.trees.standing(COUNTY, 198, "2026-03-03");
		this.trees.standing(COUNTY, 120, "2026-03-04");
		String answer = this.trees.ask(post("/api/v1/trees/" + this.champion.tree() + "/owners").content("""
				{"name": "C. <b>Landholder</b> 樹", "contact": "The white gate, Mill Lane"}"""), this.coordinator)
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
		this.owner = com.jayway.jsonpath.JsonPath.read(answer, "$.id");
	}

	@Test
	void namesATreeThatSharesItsTitleCoChampion() throws Exception {
		try (Pdf pdf = paper(get("/trees/HNR-0002/certificate.pdf"))) {
			assertThat(pdf.isForEveryone().pages()).isOne();
			assertThat(pdf.text()).containsSubsequence("The big-tree register of honourshire, Nowhere",
					"the tree HNR-0002", "co-champion white oak", "Quercus alba",
					"It shares the title with one other tree.", "girth 198.0 in", "HNR-0002");
		}
	}

	@Test
	void isNotGivenToATreeWithoutATitleOrNotThere() throws Exception {
		this.mvc.perform(get("/trees/HNR-0003/certificate.pdf")).andExpect(status().isNotFound());
		this.mvc.perform(get("/trees/HNR-9999/certificate.pdf")).andExpect(status().isNotFound());
	}

	@Test
	void certificatesAndBookletSayNothingOfOwnersAndPlaces() throws Exception {
		for (String address : new String[] { "/trees/HNR-0002/certificate.pdf",
				"/exports/" + COUNTY + "/rankings.pdf" }) {
			try (Pdf pdf = paper(get(address))) {
				assertThat(pdf.text()).doesNotContain("Landholder", "white gate", "40.1", "-86.2");
			}
		}
	}

	@Test
	void aLetterTellsAnOwnerWhatWasWonAndWhy() throws Exception {
		MockHttpServletRequestBuilder request = get(
				"/trees/" + this.champion.tree() + "/owners/" + this.owner + "/letter.pdf");
		try (Pdf pdf = paper(request.header(HttpHeaders.AUTHORIZATION, this.coordinator.bearer()))) {
			assertThat(pdf.isForEveryone().pages()).isOne();
			assertThat(pdf.text()).containsSubsequence("C. <b>Landholder</b> 樹", "The white gate, Mill Lane",
					"Your white oak holds a title", "champion white oak, on",
					"The reason on record: a measurement was signed off.", "It gives nobody a right to enter");
		}
		this.mvc
			.perform(get("/trees/" + this.champion.tree() + "/owners/" + this.owner + "/letter.pdf")
				.header(HttpHeaders.AUTHORIZATION, this.people.verifier(COUNTY).bearer()))
			.andExpect(status().isForbidden());
	}

	@Test
	void aLetterTellsAnOwnerWhyATitleEnded() throws Exception {
		this.trees.county("honourlost", "HNL");
		TestPerson desk = this.people.coordinator("honourlost");
		TestTrees.Filed fallen = this.trees.standing("honourlost", 200, "2026-03-02");
		String holder = id(this.trees.ask(post("/api/v1/trees/" + fallen.tree() + "/owners").content("""
				{"name": "The Millers", "contact": "The mill\\nFerry Road"}"""), desk));
		String report = id(this.trees.ask(post("/api/v1/trees/" + fallen.tree() + "/condition-reports")
			.content("{\"condition\": \"fallen\", \"observedOn\": \"2026-06-01\"}"), fallen.filer()));
		this.trees
			.decide("/api/v1/condition-reports/" + report, "/decision", "{\"accept\": true, \"reason\": \"seen\"}",
					desk)
			.andExpect(status().isOk());
		try (Pdf pdf = paper(get("/trees/" + fallen.tree() + "/owners/" + holder + "/letter.pdf")
			.header(HttpHeaders.AUTHORIZATION, desk.bearer()))) {
			assertThat(pdf.isForEveryone().text())
				.containsSubsequence("The Millers", "The mill", "Ferry Road",
						"Your white oak no longer holds its title", "Dear Millers,", "The reason on record: it fell.",
						"What it held stays in its history.")
				.doesNotContain("as long as it stands");
		}
	}

	private static String id(ResultActions created) throws Exception {
		return com.jayway.jsonpath.JsonPath
			.read(created.andExpect(status().isCreated()).andReturn().getResponse().getContentAsString(), "$.id");
	}

	/** The owner of the first has not said that it may be listed. */
	@Test
	void theBookletRanksEveryTreeAndLeadsToEachSpecies() throws Exception {
		try (Pdf pdf = paper(get("/exports/" + COUNTY + "/rankings.pdf?paper=a4"))) {
			assertThat(pdf.isForEveryone().size()).isEqualTo("595 x 842");
			assertThat(pdf.title()).isEqualTo("honourshire: rankings of the biggest trees");
			assertThat(pdf.bookmarks()).containsSubsequence("Rules", "Rankings", "white oak", "What changed in a year",
					"Index of species");
			assertThat(pdf.text()).contains(
					"1 not shown, at the owner's wish co-champion 200.0 80.0 40.0 290.00 2 March 2026",
					"2 HNR-0002 co-champion 198.0", "3 HNR-0003 120.0",
					"Trees within 5 points of the leader share the title.", "Because a measurement was signed off",
					"HNR-0002 became co-champion");
			assertThat(pageOf(pdf, "HNR-0003 120.0"))
				.isEqualTo(Integer.parseInt(after(pdf.text(pdf.pages(), pdf.pages()), "Quercus alba")));
		}
	}

	@Test
	void theBookletIsOfADayAndNotOfTomorrow() throws Exception {
		try (Pdf pdf = paper(get("/exports/" + COUNTY + "/rankings.pdf?asOf=2026-03-02"))) {
			assertThat(pdf.text()).contains("standings of 2 March 2026", "champion 200.0").doesNotContain("HNR-0002");
		}
		this.mvc.perform(get("/exports/" + COUNTY + "/rankings.pdf?asOf=2999-01-01"))
			.andExpect(status().isBadRequest());
		this.mvc.perform(get("/exports/nowhereshire/rankings.pdf")).andExpect(status().isNotFound());
	}

	private static int pageOf(Pdf pdf, String words) {
		for (int page = 1; page <= pdf.pages(); page++) {
			if (pdf.text(page, page).contains(words)) {
				return page;
			}
		}
		return 0;
	}

	/** The number that follows the words and the dots. */
	private static String after(String text, String words) {
		String rest = text.substring(text.indexOf(words) + words.length()).replaceFirst("^[ .]+", "");
		return rest.substring(0, rest.indexOf(' ') < 0 ? rest.length() : rest.indexOf(' '));
	}

	private Pdf paper(MockHttpServletRequestBuilder request) throws Exception {
		return new Pdf(
				this.mvc.perform(request).andExpect(status().isOk()).andReturn().getResponse().getContentAsByteArray());
	}

}

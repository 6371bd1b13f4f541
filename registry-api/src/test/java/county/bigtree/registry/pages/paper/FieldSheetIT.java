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
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Field sheets, blank and for a tree.
 */
@RegistryTest
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class FieldSheetIT {

	private static final String COUNTY = "sheetshire";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	private TestTrees.Filed oak;

	private String tag;

	@BeforeAll
	void found() throws Exception {
		this.trees.county(COUNTY, "SHT");
		this.oak = this.trees.standing(COUNTY, 187, "2026-05-02");
		this.tag = "SHT-0001";
	}

	@Test
	void hasTwoSidesOnLetterAndOnA4() throws Exception {
		try (Pdf letter = paper(get("/field-sheet.pdf")); Pdf a4 = paper(get("/field-sheet.pdf?paper=a4"))) {
			assertThat(letter.isForEveryone().pages()).isEqualTo(2);
			assertThat(letter.size()).isEqualTo("612 x 792");
			assertThat(a4.isForEveryone().pages()).isEqualTo(2);
			assertThat(a4.size()).isEqualTo("595 x 842");
			assertThat(letter.title()).isEqualTo("Field sheet");
			assertThat(letter.bookmarks()).containsExactly("Field sheet", "Girth", "Mean crown spread", "Total height",
					"The arithmetic");
		}
	}

	@Test
	void drawsEveryMethodAndSaysInWordsWhatItShows() throws Exception {
		try (Pdf pdf = paper(get("/field-sheet.pdf"))) {
			assertThat(pdf.pictures()).hasSize(11)
				.contains("A tape lies level around a stem, 4.5 ft above the ground on the uphill side.");
		}
	}

	@Test
	void tellsTheCautionsFirstAndTheArithmeticLast() throws Exception {
		try (Pdf pdf = paper(get("/field-sheet.pdf"))) {
			assertThat(pdf.text()).containsSubsequence("Field sheet", "Landowner asked", "Before you go to a tree",
					"Do not climb.", "Never look at the sun", "Girth", "C = m × L + r", "Mean crown spread",
					"W = (D1 + D2 + …) / how many", "Total height", "H = h × t / r", "H = X (tan a − tan b)",
					"The arithmetic", "Crown spread / 4");
			assertThat(pdf.text()).contains("not a tree-risk assessment and not a protection order")
				.doesNotContain("letters that this paper's fonts");
		}
	}

	@Test
	void isKeptByWhoHasIt() throws Exception {
		String etag = this.mvc.perform(get("/field-sheet.pdf"))
			.andExpect(header().string(HttpHeaders.CONTENT_DISPOSITION, "inline; filename=\"field-sheet.pdf\""))
			.andExpect(header().string(HttpHeaders.CACHE_CONTROL, "public, max-age=0, must-revalidate"))
			.andReturn()
			.getResponse()
			.getHeader(HttpHeaders.ETAG);
		assertThat(etag).startsWith("\"");
		this.mvc.perform(get("/field-sheet.pdf").header(HttpHeaders.IF_NONE_MATCH, String.valueOf(etag)))
			.andExpect(status().isNotModified());
	}

	@Test
	void refusesPaperThatIsNotThere() throws Exception {
		this.mvc.perform(get("/field-sheet.pdf?paper=legal"))
			.andExpect(status().isBadRequest())
			.andExpect(jsonPath("$.parameter").value("paper"));
	}

	@Test
	void bringsWhatIsOnRecordOfATree() throws Exception {
		try (Pdf pdf = paper(get("/trees/" + this.tag + "/field-sheet.pdf"))) {
			assertThat(pdf.isForEveryone().pages()).isEqualTo(2);
			assertThat(pdf.title()).isEqualTo(this.tag + ": field sheet");
			assertThat(pdf.text()).contains("white oak", "Quercus alba", COUNTY,
					"On record since 2 May 2026: girth 187.0 in, height 80.0 ft, crown spread 40.0 ft, 277.00 points.")
				.doesNotContain("Species, or what you take it for");
		}
	}

	/** The tree was filed at 40.1, -86.2 and its owner has said nothing. */
	@Test
	void tellsTheExactPlaceToTheCountysVerifiersAlone() throws Exception {
		TestPerson verifier = this.people.verifier(COUNTY);
		TestPerson stranger = this.people.volunteer(COUNTY);
		String address = "/trees/" + this.tag + "/field-sheet.pdf";
		try (Pdf pdf = paper(get(address).header(HttpHeaders.AUTHORIZATION, verifier.bearer()))) {
			assertThat(pdf.text()).contains("40.1, -86.2");
		}
		try (Pdf pdf = paper(get(address).header(HttpHeaders.AUTHORIZATION, stranger.bearer()));
				Pdf publicly = paper(get(address))) {
			assertThat(pdf.text()).doesNotContain("40.1, -86.2");
			assertThat(publicly.text()).doesNotContain("40.1, -86.2");
		}
	}

	@Test
	void printsAStemRulingAndItsWordsForTheCountysPeopleAlone() throws Exception {
		this.trees
			.decide("/api/v1/trees/" + this.oak.tree(), "/stem-rulings", """
					{"form": "forked-below", "unionHeightFeet": 2.5, "scoredStem": "the one by the white gate",
					 "reason": "Seen on the photo of the base.", "keeps": ["%s"]}""".formatted(this.oak.measurement()),
					this.people.coordinator(COUNTY))
			.andExpect(status().isOk());
		String address = "/trees/" + this.tag + "/field-sheet.pdf";
		try (Pdf pdf = paper(get(address).header(HttpHeaders.AUTHORIZATION, this.people.volunteer(COUNTY).bearer()));
				Pdf publicly = paper(get(address))) {
			assertThat(pdf.text()).contains("Ruled to fork below breast height: one stem is scored.",
					"The piths meet 2.5 ft above the ground.", "Scored stem: the one by the white gate.");
			assertThat(publicly.text()).contains("Ruled to fork below breast height").doesNotContain("white gate");
		}
	}

	private Pdf paper(MockHttpServletRequestBuilder request) throws Exception {
		return new Pdf(this.mvc.perform(request)
			.andExpect(status().isOk())
			.andExpect(header().string(HttpHeaders.CONTENT_TYPE, "application/pdf"))
			.andReturn()
			.getResponse()
			.getContentAsByteArray());
	}

}

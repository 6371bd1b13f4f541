package county.bigtree.registry.pages.filing;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

/**
 * Telling a county something by the pages, with and without an account.
 */
@RegistryTest
class LetterPageIT {

	private static final String COUNTY = "lettershire";

	private static final String LETTER = "/counties/" + COUNTY + "/letter";

	private static boolean founded;

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestPeople people;

	@Autowired
	private TestTrees trees;

	@BeforeEach
	void found() throws Exception {
		if (!founded) {
			this.trees.county(COUNTY, "LTS");
			founded = true;
		}
	}

	@Test
	void takesALetterOfAnybody() throws Exception {
		PageReader reader = PageReader.anonymous(this.mvc);
		MockHttpServletResponse page = reader.open(LETTER);
		assertThat(page.getCookie("session")).isNull();
		SentForm form = SentForm.of(page.getContentAsString(), LETTER);
		assertThat(form.has("_csrf")).isFalse();
		MockHttpServletResponse refused = reader.send(LETTER, form.with("text", "Behind the <mill>."));
		assertThat(refused.getStatus()).isEqualTo(422);
		assertThat(refused.getContentAsString()).contains("Choose what it is about.");
		form = SentForm.of(refused.getContentAsString(), LETTER);
		assertThat(form.value("text")).isEqualTo("Behind the <mill>.");
		MockHttpServletResponse sent = reader.send(LETTER, form.with("about", "tip").with("contact", "by post"));
		assertThat(reader.page(PageReader.leads(sent))).contains("It is on its way", "is to answer it by");
		assertThat(letters()).contains("Behind the <mill>.", "\"tip\"");
	}

	@Test
	void takesALetterOfSomebodyWhoIsSignedIn() throws Exception {
		PageReader reader = PageReader.signedIn(this.mvc, this.people.volunteer(COUNTY));
		SentForm form = SentForm.of(reader.page(LETTER), LETTER);
		form.with("about", "other").with("text", "A signed one.");
		String sent = PageReader.leads(reader.send(LETTER, form));
		assertThat(PageReader.leads(reader.send(LETTER, form))).isEqualTo(sent);
		assertThat(letters().split("A signed one", -1)).hasSize(2);
	}

	@Test
	void dropsCharactersThatCannotBeKept() throws Exception {
		PageReader reader = PageReader.signedIn(this.mvc, this.people.volunteer(COUNTY));
		SentForm form = SentForm.of(reader.page(LETTER), LETTER);
		form.with("about", "other").with("text", "Pasted\u000b with\u0000 an odd\ud800 end.\u007f");
		PageReader.leads(reader.send(LETTER, form));
		assertThat(letters()).contains("Pasted with an odd end.");
	}

	@Test
	void namesTheTreeThatItIsAbout() throws Exception {
		String tree = this.trees.standing(COUNTY, 100, "2024-05-02").tree();
		PageReader reader = PageReader.anonymous(this.mvc);
		String foot = reader.page("/trees/" + tree);
		assertThat(foot).contains("href=\"/letter?tree=" + tree + "\"");
		String leads = PageReader.leads(reader.open("/letter?tree=" + tree));
		assertThat(leads).startsWith(LETTER + "?tree=LTS-");
		assertThat(SentForm.of(reader.page(leads), LETTER).value("tree")).startsWith("LTS-");
		assertThat(reader.page("/counties/" + COUNTY)).contains("href=\"" + LETTER + "\"");
		assertThat(reader.page("/about")).contains("href=\"/letter\"");
		assertThat(reader.page("/letter?tree=nothing-of-the-kind")).contains("href=\"" + LETTER + "\"");
	}

	private String letters() throws Exception {
		return this.trees.ask(get("/api/v1/counties/" + COUNTY + "/letters"), this.people.coordinator(COUNTY))
			.andReturn()
			.getResponse()
			.getContentAsString();
	}

}

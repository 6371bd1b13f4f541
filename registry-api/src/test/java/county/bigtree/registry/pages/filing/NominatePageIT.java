package county.bigtree.registry.pages.filing;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

/**
 * Nominating a tree by the pages, step by step and without scripts. Points: 100 in + 80
 * ft + 40 ft / 4 = 190 (common practice, no source).
 */
@RegistryTest
class NominatePageIT {

	private static final String NOMINATE = "/nominate";

	private static final String COUNTY = "formshire";

	private static boolean founded;

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestPeople people;

	@Autowired
	private TestTrees trees;

	@Autowired
	private JdbcClient jdbc;

	@BeforeEach
	void found() throws Exception {
		if (!founded) {
			this.trees.county(COUNTY, "FOS");
			founded = true;
		}
	}

	@Test
	void leadsFromAnEmptyFormToAFiledNomination() throws Exception {
		TestPerson person = this.people.volunteer(COUNTY);
		PageReader reader = PageReader.signedIn(this.mvc, person);
		SentForm form = SentForm.of(reader.page(NOMINATE), NOMINATE);
		assertThat(form.value("county")).isEqualTo(COUNTY);
		assertThat(form.value("measuredBy")).isEqualTo(person.creditName());
		assertThat(form.value("step")).isEqualTo("where");
		form = next(reader, where(form), "girth");
		assertThat(form.value("species")).isEqualTo("quercus-alba");
		form = next(reader, form.with("girth.girth", "100"), "height");
		form = next(reader, form.with("height", "pole").with("go", "choose").with("height.height", ""), "height",
				"choose");
		form = next(reader, form.with("height.height", "80"), "crown");
		form = next(reader, form.with("crown.axes.1", "40").with("crown.axes.2", "40"), "people");
		MockHttpServletResponse look = reader.send(NOMINATE, form.with("go", "next"));
		assertThat(look.getContentAsString()).contains("190.00", "white oak").doesNotContain("role=\"alert\"");
		form = SentForm.of(look.getContentAsString(), NOMINATE);
		MockHttpServletResponse filed = file(reader, form);
		String page = reader.page(PageReader.leads(filed));
		assertThat(page).contains("It is filed.", "waits for the county", "190.00", "FOS-0", "data-draft-done");
		String api = this.trees.ask(get("/api/v1" + PageReader.leads(filed).replace("?done=filed", "")), person)
			.andReturn()
			.getResponse()
			.getContentAsString();
		assertThat((String) JsonPath.read(api, "$.status")).isEqualTo("submitted");
		assertThat((String) JsonPath.read(api, "$.access")).isEqualTo("by-permission");
		assertThat((double) JsonPath.read(api, "$.measurement.reduced.points")).isEqualTo(190.0);
	}

	@Test
	void keepsAllThatWasTypedWhereAStepIsRefused() throws Exception {
		PageReader reader = PageReader.signedIn(this.mvc, this.people.volunteer(COUNTY));
		SentForm empty = SentForm.of(reader.page(NOMINATE), NOMINATE);
		MockHttpServletResponse refused = reader.send(NOMINATE,
				empty.with("go", "next")
					.with("locality", "by the <mill> & \"weir\"")
					.with("location.latitude", "north")
					.with("crown.axes.3", "12 ft 3"));
		assertThat(refused.getStatus()).isEqualTo(422);
		String page = refused.getContentAsString();
		assertThat(page).contains("href=\"#speciesName\"", "href=\"#location.latitude\"",
				"href=\"#location.longitude\"", "Say what species it is.");
		SentForm back = SentForm.of(page, NOMINATE);
		assertThat(back.value("locality")).isEqualTo("by the <mill> & \"weir\"");
		assertThat(back.value("location.latitude")).isEqualTo("north");
		assertThat(back.value("crown.axes.3")).isEqualTo("12 ft 3");
		assertThat(back.value("key")).isEqualTo(empty.value("key"));
		assertThat(back.value("step")).isEqualTo("where");
	}

	@Test
	void showsAnUnreadableFigureAtItsFieldAndStaysThere() throws Exception {
		PageReader reader = PageReader.signedIn(this.mvc, this.people.volunteer(COUNTY));
		SentForm form = next(reader, where(SentForm.of(reader.page(NOMINATE), NOMINATE)), "girth");
		MockHttpServletResponse refused = reader.send(NOMINATE, form.with("girth.girth", "a lot").with("go", "next"));
		assertThat(refused.getStatus()).isEqualTo(422);
		assertThat(refused.getContentAsString()).contains("href=\"#girth.girth\"", "value=\"a lot\"");
		assertThat(SentForm.of(refused.getContentAsString(), NOMINATE).value("step")).isEqualTo("girth");
	}

	@Test
	void keepsWhatWasReadByAnotherMethod() throws Exception {
		PageReader reader = PageReader.signedIn(this.mvc, this.people.volunteer(COUNTY));
		SentForm form = SentForm.of(reader.page(NOMINATE), NOMINATE).with("step", "height");
		form = next(reader, form.with("height", "equal-arm").with("height.distance", "77"), "height", "choose");
		form = next(reader, form.with("height", "pole"), "height", "choose");
		assertThat(form.has("height.height")).isTrue();
		form = next(reader, form.with("height", "equal-arm"), "height", "choose");
		assertThat(form.value("height.distance")).isEqualTo("77");
	}

	@Test
	void offersTheSpeciesThatANameMayMean() throws Exception {
		PageReader reader = PageReader.signedIn(this.mvc, this.people.volunteer(COUNTY));
		SentForm form = where(SentForm.of(reader.page(NOMINATE), NOMINATE)).with("speciesName", "oak");
		MockHttpServletResponse asked = reader.send(NOMINATE, form.with("go", "next"));
		assertThat(asked.getStatus()).isEqualTo(422);
		assertThat(asked.getContentAsString()).contains("Choose which species you mean.");
		String first = asked.getContentAsString().replaceFirst("(?s).*?name=\"species\" value=\"([a-z-]+)\".*", "$1");
		form = SentForm.of(asked.getContentAsString(), NOMINATE).with("species", first);
		assertThat(next(reader, form, "girth").value("species")).isEqualTo(first);
		MockHttpServletResponse none = reader.send(NOMINATE, form.with("speciesName", "zzqx").with("go", "find"));
		assertThat(none.getContentAsString()).doesNotContain("name=\"species\" value");
		MockHttpServletResponse unknown = reader.send(NOMINATE, form.with("speciesName", "zzqx").with("go", "next"));
		assertThat(unknown.getContentAsString()).contains("The register knows no species by that name.");
	}

	@Test
	void partsAPairOfCoordinatesCopiedFromAMap() throws Exception {
		PageReader reader = PageReader.signedIn(this.mvc, this.people.volunteer(COUNTY));
		SentForm form = where(SentForm.of(reader.page(NOMINATE), NOMINATE)).with("location.latitude", "40.1234, -86.5")
			.with("location.longitude", "");
		SentForm parted = next(reader, form, "girth");
		assertThat(parted.value("location.latitude")).isEqualTo("40.1234");
		assertThat(parted.value("location.longitude")).isEqualTo("-86.5");
	}

	@Test
	void asksAboutOddFiguresAndTakesThemOnceTheyAreConfirmed() throws Exception {
		PageReader reader = PageReader.signedIn(this.mvc, this.people.volunteer(COUNTY));
		SentForm form = filled(reader).with("height.height", "20");
		MockHttpServletResponse asked = reader.send(NOMINATE, form.with("go", "file"));
		assertThat(asked.getStatus()).isEqualTo(422);
		assertThat(asked.getContentAsString()).contains("Please look at this again", "I looked again: it is right.");
		MockHttpServletResponse unticked = reader.send(NOMINATE,
				SentForm.of(asked.getContentAsString(), NOMINATE).with("go", "file"));
		assertThat(unticked.getStatus()).isEqualTo(422);
		MockHttpServletResponse filed = reader.send(NOMINATE, ticked(unticked.getContentAsString()).with("go", "file"));
		assertThat(PageReader.leads(filed)).startsWith("/nominations/");
	}

	@Test
	void asksAnewWhereTheFiguresWereChangedAfterTheyWereConfirmed() throws Exception {
		PageReader reader = PageReader.signedIn(this.mvc, this.people.volunteer(COUNTY));
		MockHttpServletResponse asked = reader.send(NOMINATE,
				filled(reader).with("height.height", "20").with("go", "file"));
		SentForm confirmed = ticked(asked.getContentAsString()).with("height.height", "19").with("go", "file");
		assertThat(reader.send(NOMINATE, confirmed).getStatus()).isEqualTo(422);
	}

	@Test
	void filesOnceWhatIsSentTwice() throws Exception {
		PageReader reader = PageReader.signedIn(this.mvc, this.people.volunteer(COUNTY));
		SentForm form = confirmed(reader);
		String first = PageReader.leads(reader.send(NOMINATE, form));
		assertThat(PageReader.leads(reader.send(NOMINATE, form))).isEqualTo(first);
		assertThat(reader.page("/mine").split("Nomination of", -1)).hasSize(2);
	}

	@Test
	void saysThatAFormWasSentAlreadyWhereItIsSentAgainChanged() throws Exception {
		PageReader reader = PageReader.signedIn(this.mvc, this.people.volunteer(COUNTY));
		SentForm form = confirmed(reader);
		PageReader.leads(reader.send(NOMINATE, form));
		MockHttpServletResponse changed = reader.send(NOMINATE, form.with("locality", "elsewhere"));
		assertThat(changed.getStatus()).isEqualTo(422);
		assertThat(changed.getContentAsString()).contains("You have filed this form already");
	}

	@Test
	void filesForSomebodyWithoutAnAccount() throws Exception {
		PageReader reader = PageReader.signedIn(this.mvc, this.people.verifier(COUNTY));
		SentForm form = filled(reader).with("filedFor.credit", "The Mill School").with("filedFor.contact", "by post");
		MockHttpServletResponse nameless = reader.send(NOMINATE, form.with("go", "file"));
		assertThat(nameless.getContentAsString()).contains("Say who found it");
		form = SentForm.of(nameless.getContentAsString(), NOMINATE)
			.with("filedFor.name", "D. Walker")
			.with("filedFor.consentToCredit", "yes");
		String filed = PageReader.leads(file(reader, form));
		String id = filed.replaceFirst("/nominations/([0-9a-f-]+).*", "$1");
		assertThat(this.jdbc.sql("""
				select b.body from nomination n join text_body b on b.id = n.filed_for where n.id = ?::uuid""")
			.param(id)
			.query(String.class)
			.single()).contains("D. Walker", "by post", "The Mill School");
		assertThat(reader.page(filed)).doesNotContain("D. Walker");
	}

	@Test
	void keepsTheFormOfSomebodyWhoWasSignedOut() throws Exception {
		TestPerson person = this.people.volunteer(COUNTY);
		SentForm form = filled(PageReader.signedIn(this.mvc, person));
		form.values().remove("_csrf");
		MockHttpServletResponse signIn = PageReader.anonymous(this.mvc).send(NOMINATE, form.with("go", "file"));
		assertThat(signIn.getStatus()).isEqualTo(401);
		SentForm kept = SentForm.of(signIn.getContentAsString(), "/sign-in");
		assertThat(kept.value("kept.girth.girth")).isEqualTo("100");
		assertThat(kept.value("kept.speciesName")).isEqualTo("white oak");
	}

	@Test
	void answersWhatWasAskedAndTakesANominationBack() throws Exception {
		TestPerson person = this.people.volunteer(COUNTY);
		PageReader reader = PageReader.signedIn(this.mvc, person);
		String page = PageReader.leads(file(reader, filled(reader))).replace("?done=filed", "");
		this.trees.decide("/api/v1" + page, "/moves", "{\"move\": \"return\", \"reason\": \"Which of the two stems?\"}",
				this.people.coordinator(COUNTY));
		String returned = reader.page(page);
		assertThat(returned).contains("More is asked of you", "Which of the two stems?");
		MockHttpServletResponse empty = reader.send(page, SentForm.of(returned, page));
		assertThat(empty.getStatus()).isEqualTo(422);
		assertThat(empty.getContentAsString()).contains("Say something in answer.");
		String answered = PageReader.leads(
				reader.send(page, SentForm.of(empty.getContentAsString(), page).with("reason", "The northern one.")));
		String submitted = reader.page(answered);
		assertThat(submitted).contains("waits for the county", "The northern one.");
		String back = reader
			.page(PageReader.leads(reader.send(page, SentForm.of(submitted, page).with("reason", "I was mistaken."))));
		assertThat(back).contains("It was taken back.", "I was mistaken.", "File it again after all");
		assertThat(PageReader.signedIn(this.mvc, this.people.volunteer(COUNTY)).open(page).getStatus()).isEqualTo(404);
	}

	private SentForm filled(PageReader reader) throws Exception {
		SentForm form = where(SentForm.of(reader.page(NOMINATE), NOMINATE));
		form.with("species", "quercus-alba").with("speciesFor", "white oak");
		return form.with("girth.girth", "100")
			.with("height", "pole")
			.with("height.height", "80")
			.with("crown.axes.1", "40")
			.with("crown.axes.2", "40");
	}

	private static SentForm where(SentForm form) {
		return form.with("speciesName", "white oak")
			.with("location.latitude", "40.1")
			.with("location.longitude", "-86.2")
			.with("locality", "by the mill");
	}

	private static SentForm next(PageReader reader, SentForm form, String leadsTo) throws Exception {
		return next(reader, form, leadsTo, "next");
	}

	private static SentForm next(PageReader reader, SentForm form, String leadsTo, String go) throws Exception {
		MockHttpServletResponse answer = reader.send(NOMINATE, form.with("go", go));
		assertThat(answer.getStatus()).as(answer.getContentAsString()).isEqualTo(200);
		SentForm led = SentForm.of(answer.getContentAsString(), NOMINATE);
		assertThat(led.value("step")).isEqualTo(leadsTo);
		return led;
	}

	/** All filled in, and answered what is asked. */
	private SentForm confirmed(PageReader reader) throws Exception {
		SentForm form = filled(reader).with("height.height", "20").with("go", "file");
		return ticked(reader.send(NOMINATE, form).getContentAsString()).with("go", "file");
	}

	/** Answers all that is asked. */
	private static SentForm ticked(String page) {
		SentForm form = SentForm.of(page, NOMINATE);
		java.util.regex.Matcher asked = java.util.regex.Pattern
			.compile("type=\"checkbox\" name=\"confirmedChecks\" value=\"([a-z-]+)\"")
			.matcher(page);
		while (asked.find()) {
			form.tick("confirmedChecks", asked.group(1));
		}
		return form;
	}

	/** Files it, whatever is asked. */
	private static MockHttpServletResponse file(PageReader reader, SentForm form) throws Exception {
		MockHttpServletResponse answer = reader.send(NOMINATE, form.with("go", "file"));
		return (answer.getStatus() == 422 && answer.getContentAsString().contains("confirmedChecks"))
				? reader.send(NOMINATE, ticked(answer.getContentAsString()).with("go", "file")) : answer;
	}

}

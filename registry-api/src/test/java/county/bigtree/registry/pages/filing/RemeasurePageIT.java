package county.bigtree.registry.pages.filing;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

/**
 * Measuring a tree again and reporting on it by the pages, what became of it, and the
 * list of one's own filings.
 */
@RegistryTest
class RemeasurePageIT {

	private static final String COUNTY = "againshire";

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
			this.trees.county(COUNTY, "AGN");
			founded = true;
		}
	}

	@Test
	void filesAGirthAloneOnceItIsConfirmedAndTakesItBack() throws Exception {
		TestPerson person = this.people.volunteer(COUNTY);
		PageReader reader = PageReader.signedIn(this.mvc, person);
		String address = again();
		SentForm form = SentForm.of(reader.page(address), address);
		assertThat(form.value("measuredBy")).isEqualTo(person.creditName());
		MockHttpServletResponse next = reader.send(address, form.with("girth.girth", "8 ft 5 in").with("go", "next"));
		form = SentForm.of(next.getContentAsString(), address);
		assertThat(form.value("step")).isEqualTo("height");
		assertThat(form.value("girth.girth")).isEqualTo("8 ft 5 in");
		MockHttpServletResponse asked = reader.send(address, form.with("go", "file"));
		assertThat(asked.getStatus()).isEqualTo(422);
		assertThat(asked.getContentAsString()).contains("value=\"lacking-figure\"");
		form = SentForm.of(asked.getContentAsString(), address).tick("confirmedChecks", "lacking-figure");
		String filed = PageReader.leads(reader.send(address, form.with("go", "file")));
		assertThat(filed).startsWith("/measurements/");
		String page = reader.page(filed);
		assertThat(page).contains("It waits for a verifier.", "101.0", "data-draft-done=\"" + address + "\"");
		String own = filed.replace("?done=filed", "");
		MockHttpServletResponse why = reader.send(own, SentForm.of(page, own));
		assertThat(why.getStatus()).isEqualTo(422);
		assertThat(why.getContentAsString()).contains("Say why it is taken back.");
		SentForm back = SentForm.of(why.getContentAsString(), own).with("reason", "The other tree.");
		assertThat(reader.page(PageReader.leads(reader.send(own, back)))).contains("It was taken back.");
		assertThat(reader.page("/mine")).contains("Remeasurement of", "Taken back.");
		assertThat(PageReader.signedIn(this.mvc, this.people.volunteer(COUNTY)).open(own).getStatus()).isEqualTo(404);
	}

	@Test
	void tellsWhereOnTheStemTheGirthWasTaken() throws Exception {
		TestPerson person = this.people.volunteer(COUNTY);
		PageReader reader = PageReader.signedIn(this.mvc, person);
		String address = again();
		SentForm form = SentForm.of(reader.page(address), address)
			.with("girth.girth", "100")
			.with("girthAt.height", "knee-high")
			.with("girthAt.why", "a burl")
			.tick("confirmedChecks", "lacking-figure");
		MockHttpServletResponse refused = reader.send(address, form.with("go", "file"));
		assertThat(refused.getStatus()).isEqualTo(422);
		assertThat(refused.getContentAsString()).contains("href=\"#girthAt.height\"", "value=\"knee-high\"");
		form = SentForm.of(refused.getContentAsString(), address).with("girthAt.height", "3 ft 2 in");
		MockHttpServletResponse asked = reader.send(address, form.with("go", "file"));
		form = SentForm.of(asked.getContentAsString(), address).tick("confirmedChecks", "lacking-figure");
		String filed = PageReader.leads(reader.send(address, form.with("go", "file"))).replace("?done=filed", "");
		assertThat(this.trees.ask(get("/api/v1" + filed), person).andReturn().getResponse().getContentAsString())
			.contains("\"heightAboveGround\":{\"feet\":3,\"inches\":2}", "\"placement\":\"a burl\"");
		assertThat(reader.page(filed)).contains("The girth was taken 3.17 ft above ground");
	}

	@Test
	void asksForTwoWidthsAtLeast() throws Exception {
		PageReader reader = PageReader.signedIn(this.mvc, this.people.volunteer(COUNTY));
		String address = again();
		SentForm form = SentForm.of(reader.page(address), address).with("step", "crown").with("crown.axes.1", "50");
		String page = reader.send(address, form.with("go", "next")).getContentAsString();
		assertThat(page).contains("href=\"#crown.axes.2\"", "At least 2 of these are needed.");
	}

	@Test
	void asksForAReadingAndForTheDay() throws Exception {
		PageReader reader = PageReader.signedIn(this.mvc, this.people.volunteer(COUNTY));
		String address = again();
		SentForm form = SentForm.of(reader.page(address), address).with("measuredOn", "last week");
		MockHttpServletResponse refused = reader.send(address, form.with("go", "file"));
		assertThat(refused.getStatus()).isEqualTo(422);
		assertThat(refused.getContentAsString()).contains("at least one", "Write the day as year, month and day",
				"value=\"last week\"");
		MockHttpServletResponse future = reader.send(address,
				form.with("measuredOn", "2999-01-01").with("girth.girth", "100").with("go", "file"));
		assertThat(future.getStatus()).isEqualTo(422);
		assertThat(future.getContentAsString()).contains("href=\"#measuredOn\"");
	}

	@Test
	void letsNobodyFileForAnotherCounty() throws Exception {
		PageReader reader = PageReader.signedIn(this.mvc, this.people.coordinator("elsewhere-again"));
		String address = again();
		SentForm form = SentForm.of(reader.page(address), address).with("girth.girth", "100");
		MockHttpServletResponse refused = reader.send(address, form.with("go", "file"));
		assertThat(refused.getStatus()).isEqualTo(403);
		assertThat(refused.getContentAsString()).contains("Only volunteers of the county", "value=\"100\"");
	}

	@Test
	void reportsThatATreeFellOnceHoweverOftenItIsSent() throws Exception {
		PageReader reader = PageReader.signedIn(this.mvc, this.people.volunteer(COUNTY));
		String address = report();
		String page = reader.page(address);
		assertThat(page).doesNotContain("name=\"began\"");
		MockHttpServletResponse refused = reader.send(address,
				SentForm.of(page, address).with("remarks", "In the storm of <Friday>."));
		assertThat(refused.getStatus()).isEqualTo(422);
		SentForm form = SentForm.of(refused.getContentAsString(), address);
		assertThat(form.value("remarks")).isEqualTo("In the storm of <Friday>.");
		form.with("condition", "fallen").with("observedOn", "2025-11-03");
		assertThat(PageReader.leads(reader.send(address, form))).startsWith("/mine?done=reported");
		assertThat(PageReader.leads(reader.send(address, form))).startsWith("/mine?done=reported");
		String mine = reader.page("/mine");
		assertThat(mine.split("Report on", -1)).hasSize(2);
		assertThat(mine).contains(": fallen", "Waits for the coordinator.");
	}

	@Test
	void letsACoordinatorSayWhenItBegan() throws Exception {
		PageReader reader = PageReader.signedIn(this.mvc, this.people.coordinator(COUNTY));
		String address = report();
		SentForm form = SentForm.of(reader.page(address), address)
			.with("condition", "dead")
			.with("observedOn", "2025-11-03")
			.with("between.earliest", "2025-10-20")
			.with("between.latest", "2025-10-10");
		MockHttpServletResponse refused = reader.send(address, form);
		assertThat(refused.getStatus()).isEqualTo(422);
		assertThat(refused.getContentAsString()).contains("href=\"#between.latest\"");
		SentForm mended = SentForm.of(refused.getContentAsString(), address).with("between.latest", "2025-10-30");
		assertThat(reader.page(PageReader.leads(reader.send(address, mended)))).contains("Taken on record.");
	}

	@Test
	void tellsANewVolunteerWhatToDo() throws Exception {
		assertThat(PageReader.signedIn(this.mvc, this.people.volunteer(COUNTY)).page("/mine"))
			.contains("You have filed nothing yet.", "href=\"/nominate\"");
		assertThat(PageReader.signedIn(this.mvc, this.people.with()).page("/mine")).contains("hold no role in a county")
			.doesNotContain("href=\"/nominate\"");
	}

	@Test
	void putsWhatIsAskedOnTop() throws Exception {
		TestPerson person = this.people.volunteer(COUNTY);
		TestTrees.Filed filed = this.trees.nominate(COUNTY, person, "quercus-alba",
				TestTrees.measurement(100, "2024-05-02"));
		this.trees.decide("/api/v1/nominations/" + filed.nomination(), "/moves",
				"{\"move\": \"return\", \"reason\": \"Is it the red one?\"}", this.people.coordinator(COUNTY));
		String mine = PageReader.signedIn(this.mvc, person).page("/mine");
		assertThat(mine.indexOf("Is it the red one?")).isBetween(1, mine.indexOf("id=\"filed\""));
		assertThat(mine).contains("Waits for your answer.", "/nominations/" + filed.nomination());
	}

	@Test
	void offersBothOnTheTreesPageToThoseWhoFile() throws Exception {
		String tree = "/trees/" + this.trees.standing(COUNTY, 100, "2024-05-02").tree();
		assertThat(PageReader.signedIn(this.mvc, this.people.volunteer(COUNTY)).page(tree)).contains("/remeasure\"",
				"/report\"");
		assertThat(PageReader.anonymous(this.mvc).page(tree)).doesNotContain("/remeasure\"", "/report\"");
	}

	private String again() throws Exception {
		return standing() + "/remeasure";
	}

	private String report() throws Exception {
		return standing() + "/report";
	}

	/** By its tag, as pages name it. */
	private String standing() throws Exception {
		String tree = this.trees.standing(COUNTY, 100, "2024-05-02").tree();
		String page = PageReader.anonymous(this.mvc).page("/trees/" + tree);
		return "/trees/" + page.replaceFirst("(?s).*?(AGN-[0-9]+).*", "$1");
	}

}

package county.bigtree.registry.story;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * A champion is passed by a rival's remeasurement, gets its title back when the rival
 * falls, and loses it when its sign-off is revoked. 100 in, 80 ft and 40 ft give 190
 * points (girth + height + a quarter of the spread: common practice, no source).
 */
@RegistryTest
class StoryHttpIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Test
	void tellsHowATitleWasWonLostAndWonBack() throws Exception {
		History history = new History("tellton", "TLT");
		history.play();
		String today = Words.day(LocalDate.now(ZoneId.of("America/New_York")));
		String champion = told("/api/v1/trees/TLT-0001/story");
		assertThat(JsonPath.<String>read(champion, "$.headline"))
			.isEqualTo("TLT-0001, a white oak in tellton, has been champion since " + today
					+ " with 190 points, measured on 2 May 2026.");
		assertThat(sentences(champion)).containsExactly(
				"%s nominated TLT-0001 as a white oak. %s filed the measurement of TLT-0001 taken on 2 May 2026: 190 points."
					.formatted(history.finder(), history.finder()),
				"%s confirmed the measurement of TLT-0001 taken on 2 May 2026. TLT-0001 came on the books. "
					.formatted(history.verifier.creditName())
						+ "TLT-0001 came into tellton's white oak ranking with 190 points and took first place. TLT-0001 became tellton's champion white oak.",
				"%s confirmed the measurement of TLT-0002 taken on 10 June 2026. "
					.formatted(history.verifier.creditName())
						+ "The score of TLT-0002 rose from 180 to 200 points. TLT-0001 lost first place in tellton's white oak ranking. "
						+ "TLT-0002 followed TLT-0001 as tellton's champion white oak.",
				"%s confirmed that TLT-0002 had fallen by 1 July 2026. ".formatted(history.coordinator.creditName())
						+ "TLT-0002 left tellton's white oak ranking, where it had 200 points. TLT-0001 took first place in tellton's white oak ranking. "
						+ "TLT-0002 ceased to be tellton's champion white oak: it fell. TLT-0001 became champion in its place.");
	}

	@Test
	void tellsTheFallenRivalsStoryToTheEnd() throws Exception {
		History history = new History("rivalton", "RVL");
		history.play();
		String rival = told("/api/v1/trees/RVL-0002/story");
		assertThat(JsonPath.<String>read(rival, "$.headline")).startsWith(
				"RVL-0002, a white oak in rivalton, has fallen, as was seen on 1 July 2026; it was champion from ");
		assertThat(kinds(rival)).containsExactly("nominated measured", "signed-off accepted | score-began", "measured",
				"signed-off | score-changed first-place-taken title-ended title-began", "condition-seen",
				"condition-confirmed | score-ended first-place-lost title-ended title-began");
	}

	@Test
	void keepsFromThePublicWhyAndWhoMeasuredAndWhatCameToNothing() throws Exception {
		History history = new History("hushton", "HSH");
		history.play();
		history.revoke();
		String pending = this.trees
			.nominate("hushton", history.volunteer, "quercus-alba", TestTrees.measurement(300, "2026-05-03"))
			.tree();
		String address = "/api/v1/counties/hushton/species/quercus-alba/story";
		String shown = told(address);
		assertThat(shown).doesNotContain("A. Finder", "seen by the road crew", "read off wrongly", pending, "-86.2",
				"HSH-0003");
		String inside = this.trees.ask(get(address), history.verifier)
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsString();
		assertThat(inside).doesNotContain("A. Finder", "-86.2")
			.contains("seen by the road crew", "read off wrongly", pending, "HSH-0003");
		assertThat(JsonPath.<String>read(shown, "$.headline")).isEqualTo("No white oak in hushton is ranked.");
		assertThat(kinds(shown)).last().isEqualTo("revoked | score-ended first-place-lost title-ended");
	}

	@Test
	void hidesATreeThatNeverCameOnTheBooksFromAllButItsPeople() throws Exception {
		this.trees.county("pendington", "PEN");
		TestPerson finder = this.people.volunteer("pendington");
		TestTrees.Filed filed = this.trees.nominate("pendington", finder, "quercus-alba",
				TestTrees.measurement(100, "2026-05-02"));
		String story = "/api/v1/trees/" + filed.tree() + "/story";
		this.mvc.perform(get(story)).andExpect(status().isNotFound());
		this.trees.ask(get(story), this.people.volunteer("pendington")).andExpect(status().isNotFound());
		this.trees.ask(get(story), finder)
			.andExpect(jsonPath("$.headline")
				.value("PEN-0001, a white oak in pendington, has been nominated and is not on the books yet."))
			.andExpect(jsonPath("$.items[0].facts[0].kind").value("nominated"));
		this.trees.ask(get(story), this.people.verifier("pendington")).andExpect(status().isOk());
	}

	@Test
	void isToldInPartsThatTogetherAreTheWhole() throws Exception {
		new History("partington", "PRT").play();
		String address = "/api/v1/counties/partington/species/quercus-alba/story";
		List<String> whole = sentences(told(address));
		List<String> parts = new ArrayList<>();
		String cursor = null;
		do {
			MockHttpServletRequestBuilder request = get(address).param("limit", "2");
			String part = this.mvc.perform((cursor != null) ? request.param("cursor", cursor) : request)
				.andExpect(status().isOk())
				.andReturn()
				.getResponse()
				.getContentAsString();
			parts.addAll(sentences(part));
			cursor = JsonPath.read(part, "$.next");
		}
		while (cursor != null);
		assertThat(parts).isEqualTo(whole).hasSizeGreaterThan(6);
	}

	@Test
	void isNotThereForACountyOrSpeciesThatIsUnknown() throws Exception {
		this.mvc.perform(get("/api/v1/counties/nowhere/species/quercus-alba/story")).andExpect(status().isNotFound());
		this.trees.county("emptyton", "EMP");
		this.mvc.perform(get("/api/v1/counties/emptyton/species/quercus-nulla/story")).andExpect(status().isNotFound());
		this.mvc.perform(get("/api/v1/counties/emptyton/species/quercus-alba/story"))
			.andExpect(jsonPath("$.headline").value("No white oak in emptyton is ranked."));
	}

	private String told(String address) throws Exception {
		return this.mvc.perform(get(address)).andExpect(status().isOk()).andReturn().getResponse().getContentAsString();
	}

	private static List<String> sentences(String story) {
		return JsonPath.read(story, "$.items[*].sentence");
	}

	private static List<String> kinds(String story) {
		int entries = JsonPath.<Integer>read(story, "$.items.length()");
		List<String> kinds = new ArrayList<>();
		for (int at = 0; at < entries; at++) {
			String facts = String.join(" ", JsonPath.<List<String>>read(story, "$.items[" + at + "].facts[*].kind"));
			String effects = String.join(" ",
					JsonPath.<List<String>>read(story, "$.items[" + at + "].effects[*].kind"));
			kinds.add(effects.isEmpty() ? facts : facts + " | " + effects);
		}
		return kinds;
	}

	/**
	 * A county's first year.
	 */
	private final class History {

		private final String county;

		private final TestPerson volunteer;

		private final TestPerson verifier;

		private final TestPerson coordinator;

		private final List<String> signOffs = new ArrayList<>();

		History(String county, String prefix) throws Exception {
			this.county = county;
			StoryHttpIT.this.trees.county(county, prefix);
			this.volunteer = StoryHttpIT.this.people.volunteer(county);
			this.verifier = StoryHttpIT.this.people.verifier(county);
			this.coordinator = StoryHttpIT.this.people.coordinator(county);
		}

		void play() throws Exception {
			nominate(100);
			TestTrees.Filed rival = nominate(90);
			confirm(created(post("/api/v1/trees/" + rival.tree() + "/measurements")
				.content(TestTrees.measurement(110, "2026-06-10"))));
			String report = created(post("/api/v1/trees/" + rival.tree() + "/condition-reports")
				.content("{\"condition\": \"fallen\", \"observedOn\": \"2026-07-01\"}"));
			StoryHttpIT.this.trees
				.decide("/api/v1/condition-reports/" + report, "/decision",
						"{\"accept\": true, \"reason\": \"seen by the road crew\"}", this.coordinator)
				.andExpect(status().isOk());
		}

		/** Takes back what made the first tree count. */
		void revoke() throws Exception {
			StoryHttpIT.this.trees
				.decide("/api/v1/sign-offs/" + this.signOffs.get(0), "/revocation",
						"{\"reason\": \"read off wrongly\"}", this.coordinator)
				.andExpect(status().is2xxSuccessful());
		}

		String finder() {
			return this.volunteer.creditName();
		}

		private TestTrees.Filed nominate(int girthInches) throws Exception {
			TestTrees.Filed tree = StoryHttpIT.this.trees.nominate(this.county, this.volunteer, "quercus-alba",
					TestTrees.measurement(girthInches, "2026-05-02"));
			confirm(tree.measurement());
			return tree;
		}

		private void confirm(String measurement) throws Exception {
			this.signOffs.add(JsonPath
				.read(StoryHttpIT.this.trees.signOff(measurement, this.verifier, "{\"verdict\": \"confirmed\"}")
					.andExpect(status().isCreated())
					.andReturn()
					.getResponse()
					.getContentAsString(), "$.id"));
		}

		private String created(MockHttpServletRequestBuilder request) throws Exception {
			return JsonPath.read(StoryHttpIT.this.trees.ask(request, this.volunteer)
				.andExpect(status().isCreated())
				.andReturn()
				.getResponse()
				.getContentAsString(), "$.id");
		}

	}

}

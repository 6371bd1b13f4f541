package county.bigtree.registry.story;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import county.bigtree.registry.standing.BookKey;
import county.bigtree.registry.standing.Recompute;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * A title contested by a measurement filed late, a tree found to be of another species
 * and found back, and a sign-off revoked: in the titles, in the standings of then and as
 * known then, in the story, and after everything was computed again. Points are girth in
 * inches and 90 (common practice, no source).
 */
@RegistryTest
class ContestedTitleIT {

	private static final String COUNTY = "contestland";

	private static final String BOOK = "/api/v1/counties/contestland/species/quercus-alba";

	private static final String CONFIRMED = "{\"verdict\": \"confirmed\"}";

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private MockMvc mvc;

	@Autowired
	private Recompute recompute;

	private final List<String> known = new ArrayList<>();

	@Test
	void readsRightInTitlesStandingsAndStoryAndStaysSo() throws Exception {
		this.trees.county(COUNTY, "CTA");
		TestPerson coordinator = this.people.coordinator(COUNTY);
		TestPerson verifier = this.people.verifier(COUNTY);
		this.trees.standing(COUNTY, 100, "2020-05-02");
		TestTrees.Filed second = this.trees.standing(COUNTY, 120, "2021-05-02");
		remember();
		String late = JsonPath.read(this.trees
			.ask(post("/api/v1/trees/CTA-0001/measurements").content(TestTrees.measurement(140, "2020-09-02")),
					this.people.volunteer(COUNTY))
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString(), "$.id");
		String signOff = JsonPath.read(this.trees.signOff(late, verifier, CONFIRMED)
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString(), "$.id");
		remember();
		identify(second, "quercus-rubra", coordinator);
		remember();
		identify(second, "quercus-alba", coordinator);
		remember();
		this.trees
			.decide("/api/v1/sign-offs/" + signOff, "/revocation", "{\"reason\": \"the wrong trunk\"}", coordinator)
			.andExpect(status().isOk());
		remember();

		assertThat(answers()).containsExactlyElementsOf(expected());
		assertThat(story()).containsSubsequence("CTA-0002 followed CTA-0001 as contestland's champion white oak.",
				"CTA-0001 followed CTA-0002 as contestland's champion white oak.",
				"identified CTA-0002 as a northern red oak", "revoked the sign-off by",
				"CTA-0001 ceased to be contestland's champion white oak: a sign-off was revoked.",
				"CTA-0002 became champion in its place.");
		List<String> before = everything();
		computeAgain();
		assertThat(everything()).isEqualTo(before);
	}

	private static List<String> expected() {
		return List.of("champion CTA-0002 from the revocation on: rival-left, null",
				"champion CTA-0001: signed-off, revoked", "champion CTA-0002: signed-off, overtaken",
				"champion CTA-0001: signed-off, overtaken",
				// as known after each step, of the end of 2020
				"2020 as known at 0: CTA-0001 190.0", "2020 as known at 1: CTA-0001 230.0",
				"2020 as known at 2: CTA-0001 230.0", "2020 as known at 3: CTA-0001 230.0",
				"2020 as known at 4: CTA-0001 190.0",
				// and of the last day asked about, as known at each step
				"2024 as known at 0: CTA-0002 210.0, CTA-0001 190.0",
				"2024 as known at 1: CTA-0001 230.0, CTA-0002 210.0", "2024 as known at 2: CTA-0001 230.0",
				"2024 as known at 3: CTA-0001 230.0, CTA-0002 210.0",
				"2024 as known at 4: CTA-0002 210.0, CTA-0001 190.0");
	}

	private List<String> answers() throws Exception {
		List<String> answers = new ArrayList<>();
		String titles = read(BOOK + "/titles");
		int spans = JsonPath.<Integer>read(titles, "$.items.length()");
		for (int index = 0; index < spans; index++) {
			String span = "$.items[" + index + "].";
			answers.add("%s %s%s: %s, %s".formatted(JsonPath.<String>read(titles, span + "title"),
					JsonPath.<String>read(titles, span + "tag"), (index == 0) ? " from the revocation on" : "",
					JsonPath.<String>read(titles, span + "began"), JsonPath.<String>read(titles, span + "ended")));
		}
		for (String day : List.of("2020-12-31", "2024-12-31")) {
			for (int step = 0; step < this.known.size(); step++) {
				String standing = read(BOOK + "/standing?asOf=%s&knownAt=%s".formatted(day, this.known.get(step)));
				List<String> tags = JsonPath.read(standing, "$.items[*].tag");
				List<Object> points = JsonPath.read(standing, "$.items[*].points");
				List<String> ranked = new ArrayList<>();
				for (int index = 0; index < tags.size(); index++) {
					ranked.add(tags.get(index) + " " + points.get(index));
				}
				answers.add("%s as known at %d: %s".formatted(day.substring(0, 4), step, String.join(", ", ranked)));
			}
		}
		return answers;
	}

	private String story() throws Exception {
		List<String> sentences = JsonPath.read(read(BOOK + "/story"), "$.items[*].sentence");
		return String.join("\n", sentences);
	}

	private List<String> everything() throws Exception {
		List<String> everything = answers();
		for (String address : List.of(BOOK + "/titles", BOOK + "/story", "/api/v1/trees/CTA-0001/scores",
				"/api/v1/trees/CTA-0002/scores")) {
			everything.add(read(address));
		}
		return everything;
	}

	private void computeAgain() {
		for (String tag : List.of("CTA-0001", "CTA-0002")) {
			assertThat(this.recompute.tree(id(tag))).as(tag).isFalse();
		}
		for (BookKey book : this.recompute.books(COUNTY)) {
			assertThat(this.recompute.book(book)).as(book.toString()).isFalse();
		}
	}

	private UUID id(String tag) {
		try {
			return UUID.fromString(JsonPath.read(read("/api/v1/trees/" + tag), "$.id"));
		}
		catch (Exception ex) {
			throw new IllegalStateException(ex);
		}
	}

	private void identify(TestTrees.Filed tree, String species, TestPerson coordinator) throws Exception {
		this.trees.decide("/api/v1/trees/" + tree.tree(), "/identifications",
				"{\"species\": \"%s\", \"by\": \"leaf\", \"reason\": \"looked again\"}".formatted(species), coordinator)
			.andExpect(status().is2xxSuccessful());
	}

	private void remember() throws Exception {
		this.known.add(JsonPath.read(read(BOOK + "/standing"), "$.recordedThrough"));
	}

	private String read(String address) throws Exception {
		return this.mvc.perform(get(address)).andExpect(status().isOk()).andReturn().getResponse().getContentAsString();
	}

}

package county.bigtree.registry.pages.desk;

import com.jayway.jsonpath.JsonPath;
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

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * The packets of two visits, of which the later planned is due earlier.
 */
@RegistryTest
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class PacketIT {

	private static final String COUNTY = "packetshire";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	private TestPerson verifier;

	private String first;

	@BeforeAll
	void plan() throws Exception {
		this.trees.county(COUNTY, "PKT");
		this.verifier = this.people.verifier(COUNTY);
		plan(this.trees.standing(COUNTY, 120, "2024-05-02").tree(), "remeasure", "2999-09-09");
		this.first = plan(this.trees.standing(COUNTY, 100, "2024-05-02").tree(), "doubt", "2999-08-08");
	}

	private String plan(String tree, String purpose, String byWhen) throws Exception {
		return JsonPath.read(this.trees
			.ask(post("/api/v1/visits").content("""
					{"tree": "%s", "purpose": "%s", "byWhen": "%s", "notes": "Ring at the <white> gate %s."}"""
				.formatted(tree, purpose, byWhen, byWhen)), this.verifier)
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString(), "$.id");
	}

	@Test
	void followTheOrderOfTheListEachOnASheetOfItsOwn() throws Exception {
		try (Pdf pdf = paper("/visits.pdf", this.verifier)) {
			assertThat(pdf.isForEveryone().pages()).isEqualTo(3);
			assertThat(pdf.bookmarks()).containsExactly("Visits to be made", "PKT-0002", "PKT-0001");
			assertThat(pdf.text(1, 1)).contains("2 stops", "Do not climb.");
			assertThat(pdf.text(2, 2)).contains("1. PKT-0002, white oak", "40.1, -86.2",
					"Ring at the <white> gate 2999-08-08.", "Something on record is in doubt", "Tape around the stem",
					"To fill in on the spot", "The owner did not let me in");
			assertThat(pdf.text(3, 3)).contains("2. PKT-0001, white oak");
		}
		try (Pdf pdf = paper("/visits.pdf?order=walk&from=40.0,-86.0&paper=a4", this.verifier)) {
			assertThat(pdf.size()).isEqualTo("595 x 842");
			assertThat(pdf.text(1, 1)).contains("As the crow flies the round is");
		}
	}

	@Test
	void aPacketOfOneVisitHoldsTheCautions() throws Exception {
		try (Pdf pdf = paper("/visits/" + this.first + "/packet.pdf", this.verifier)) {
			assertThat(pdf.isForEveryone().pages()).isOne();
			assertThat(pdf.text()).contains("PKT-0002", "Do not climb.", "40.1, -86.2");
		}
	}

	@Test
	void areForWhoGoesAndKeptByNobody() throws Exception {
		ask("/visits/" + this.first + "/packet.pdf", this.verifier).andExpect(status().isOk())
			.andExpect(header().string(HttpHeaders.CACHE_CONTROL, "private, no-store"));
		ask("/visits/" + this.first + "/packet.pdf", this.people.volunteer(COUNTY)).andExpect(status().isForbidden());
		ask("/visits.pdf", this.people.volunteer(COUNTY)).andExpect(status().isForbidden());
		try (Pdf pdf = paper("/visits.pdf", this.people.verifier(COUNTY))) {
			assertThat(pdf.text()).contains("No visit waits for you").doesNotContain("PKT-");
		}
	}

	@Test
	void refuseAPlaceThatIsNone() throws Exception {
		ask("/visits.pdf?order=walk&from=the+mill", this.verifier).andExpect(status().isBadRequest());
	}

	private Pdf paper(String address, TestPerson person) throws Exception {
		return new Pdf(
				ask(address, person).andExpect(status().isOk()).andReturn().getResponse().getContentAsByteArray());
	}

	private ResultActions ask(String address, TestPerson person) throws Exception {
		return this.mvc.perform(get(address).header(HttpHeaders.AUTHORIZATION, person.bearer()));
	}

}

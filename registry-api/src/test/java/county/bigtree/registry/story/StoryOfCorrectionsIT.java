package county.bigtree.registry.story;

import java.util.List;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * What a coordinator decides about trees, as the story tells it.
 */
@RegistryTest
class StoryOfCorrectionsIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Test
	void aMergeIsToldInTheStoryOfTheTreeThatIsKept() throws Exception {
		this.trees.county("mergetale", "MGT");
		TestTrees.Filed kept = this.trees.standing("mergetale", 100, "2020-05-02");
		TestTrees.Filed merged = this.trees.standing("mergetale", 120, "2024-05-02");
		TestPerson coordinator = this.people.coordinator("mergetale");
		decide(merged, "/merge", "{\"into\": \"%s\", \"reason\": \"the same tree\"}".formatted(kept.tree()),
				coordinator);
		this.mvc.perform(get("/api/v1/trees/" + merged.tree() + "/story"))
			.andExpect(status().isTemporaryRedirect())
			.andExpect(redirectedUrl("/api/v1/trees/" + kept.tree() + "/story"));
		assertThat(lastOf("/api/v1/trees/MGT-0001/story")).isEqualTo(coordinator.creditName()
				+ " found MGT-0002 to be the same tree as MGT-0001 and merged it into that."
				+ " MGT-0002 left mergetale's white oak ranking, where it had 210 points and first place."
				+ " The score of MGT-0001 rose from 190 to 210 points, and it took first place in mergetale's white oak ranking."
				+ " MGT-0002 ceased to be mergetale's champion white oak: two entries were one tree."
				+ " MGT-0001 became mergetale's champion white oak.");
		assertThat(sentences(told("/api/v1/trees/MGT-0001/story")))
			.filteredOn((sentence) -> sentence.contains("nominated MGT-0002"))
			.hasSize(1);
	}

	@Test
	void aSplitIsToldInTheStoriesOfBothTrees() throws Exception {
		this.trees.county("splittale", "SPT");
		TestTrees.Filed filed = this.trees.standing("splittale", 100, "2020-05-02");
		String other = JsonPath.read(this.trees
			.ask(post("/api/v1/trees/" + filed.tree() + "/measurements")
				.content(TestTrees.measurement(150, "2024-05-02")), this.people.volunteer("splittale"))
			.andReturn()
			.getResponse()
			.getContentAsString(), "$.id");
		this.trees.signOff(other, this.people.verifier("splittale"), "{\"verdict\": \"confirmed\"}");
		TestPerson coordinator = this.people.coordinator("splittale");
		decide(filed, "/split",
				"""
						{"measurements": ["%s"], "location": {"latitude": 40.2, "longitude": -86.3}, "reason": "the neighbour"}"""
					.formatted(other),
				coordinator);
		String sentence = coordinator.creditName() + " found SPT-0001 to be two trees and split off SPT-0002.";
		String old = told("/api/v1/trees/SPT-0001/story");
		assertThat(sentences(old)).last()
			.asString()
			.startsWith(sentence)
			.contains("The score of SPT-0001 fell from 240 to 190 points");
		String split = told("/api/v1/trees/SPT-0002/story");
		assertThat(JsonPath.<String>read(split, "$.headline"))
			.startsWith("SPT-0002, a white oak in splittale, has been champion since ");
		assertThat(sentences(split)).last()
			.asString()
			.startsWith(sentence)
			.contains("SPT-0002 came into splittale's white oak ranking with 240 points and took first place.");
		assertThat(sentences(split))
			.anyMatch((one) -> one.contains("filed the measurement of SPT-0001 taken on 2 May 2024"));
	}

	@Test
	void aLateFilingTellsWhatIsNowKnownOfThePast() throws Exception {
		this.trees.county("latetale", "LTT");
		TestTrees.Filed filed = this.trees.standing("latetale", 100, "2020-05-02");
		TestPerson volunteer = this.people.volunteer("latetale");
		TestPerson verifier = this.people.verifier("latetale");
		for (String visit : List.of(TestTrees.measurement(120, "2024-05-02"),
				TestTrees.measurement(110, "2022-05-02"))) {
			String id = JsonPath
				.read(this.trees.ask(post("/api/v1/trees/" + filed.tree() + "/measurements").content(visit), volunteer)
					.andExpect(status().isCreated())
					.andReturn()
					.getResponse()
					.getContentAsString(), "$.id");
			this.trees.signOff(id, verifier, "{\"verdict\": \"confirmed\"}").andExpect(status().isCreated());
		}
		assertThat(lastOf("/api/v1/trees/LTT-0001/story"))
			.isEqualTo(verifier.creditName() + " confirmed the measurement of LTT-0001 taken on 2 May 2022."
					+ " As is known now, LTT-0001 had 200 points from 2 May 2022 to 1 May 2024.");
		assertThat(JsonPath.<String>read(told("/api/v1/trees/LTT-0001/story"), "$.headline"))
			.endsWith(" with 210 points, measured on 2 May 2024.");
	}

	@Test
	void eligibilityStemsAndNamesAreTold() throws Exception {
		this.trees.county("ruletale", "RLT");
		TestTrees.Filed filed = this.trees.standing("ruletale", 100, "2020-05-02");
		TestPerson coordinator = this.people.coordinator("ruletale");
		String address = "/api/v1/trees/RLT-0001/story";
		decide(filed, "/eligibility", "{\"eligible\": false, \"reason\": \"planted in a pot\"}", coordinator);
		assertThat(lastOf(address)).startsWith(coordinator.creditName() + " judged RLT-0001 not eligible. ")
			.endsWith("RLT-0001 ceased to be ruletale's champion white oak: it is not eligible.");
		assertThat(JsonPath.<String>read(told(address), "$.headline"))
			.startsWith("RLT-0001, a white oak in ruletale, is not eligible and not ranked; it was champion from ");
		decide(filed, "/eligibility", "{\"eligible\": true, \"reason\": \"it has roots\"}", coordinator);
		assertThat(lastOf(address)).startsWith(coordinator.creditName() + " judged RLT-0001 eligible. ")
			.endsWith("RLT-0001 became ruletale's champion white oak.");
		decide(filed, "/stem-rulings", "{\"form\": \"several\", \"keeps\": [], \"reason\": \"taped around both\"}",
				coordinator);
		assertThat(lastOf(address))
			.startsWith(coordinator.creditName() + " ruled which stem of RLT-0001 is scored, from ")
			.endsWith("RLT-0001 ceased to be ruletale's champion white oak: it was ruled which stem is scored.");
		decide(filed, "/stem-rulings", "{\"form\": \"single\", \"keeps\": [\"%s\"], \"reason\": \"looked again\"}"
			.formatted(filed.measurement()), coordinator);
		decide(filed, "/identifications",
				"{\"species\": \"quercus-rubra\", \"by\": \"leaf\", \"reason\": \"pointed lobes\"}", coordinator);
		assertThat(lastOf(address)).startsWith(coordinator.creditName()
				+ " identified RLT-0001 as a northern red oak; it had been taken for a white oak. "
				+ "RLT-0001 left ruletale's white oak ranking, where it had 190 points and first place. "
				+ "RLT-0001 came into ruletale's northern red oak ranking with 190 points and took first place. ");
		assertThat(told(address)).doesNotContain("planted in a pot", "it has roots", "taped around", "pointed lobes");
		assertThat(lastOf("/api/v1/counties/ruletale/species/quercus-alba/story"))
			.contains("RLT-0001 left ruletale's white oak ranking, where it had 190 points and first place.")
			.doesNotContain("came into ruletale's northern red oak");
		assertThat(sentences(told("/api/v1/counties/ruletale/species/quercus-rubra/story"))).last()
			.asString()
			.contains("RLT-0001 came into ruletale's northern red oak ranking with 190 points and took first place.");
	}

	@Test
	void aLineDisputeIsToldFromProposalToAgreement() throws Exception {
		this.trees.county("linetale", "LTA");
		this.trees.county("linetaleb", "LTB");
		TestTrees.Filed filed = this.trees.standing("linetale", 100, "2020-05-02");
		TestPerson proposes = this.people.coordinator("linetale");
		TestPerson agrees = this.people.coordinator("linetaleb");
		for (boolean yes : new boolean[] { false, true }) {
			String proposal = JsonPath.read(this.trees.decide("/api/v1/trees/" + filed.tree(), "/location", """
					{"location": {"latitude": 40.2, "longitude": -86.3, "accuracyMetres": 5}, "county": "linetaleb",
					 "reason": "over the brook"}""", proposes)
				.andExpect(status().isAccepted())
				.andReturn()
				.getResponse()
				.getContentAsString(), "$.id");
			this.trees
				.decide("/api/v1/relocations/" + proposal, "/decision",
						"{\"accept\": %s, \"reason\": \"walked the line\"}".formatted(yes), agrees)
				.andExpect(status().isOk());
		}
		String inside = this.trees.ask(get("/api/v1/trees/LTA-0001/story"), this.people.coordinator("linetale"))
			.andReturn()
			.getResponse()
			.getContentAsString();
		assertThat(told("/api/v1/trees/LTA-0001/story")).as("what the public reads").doesNotContain("proposed");
		assertThat(String.join("\n", sentences(inside))).containsSubsequence(
				proposes.creditName() + " proposed that LTA-0001 stands in linetaleb.",
				agrees.creditName() + " did not agree that LTA-0001 stands in linetaleb.",
				proposes.creditName() + " proposed that LTA-0001 stands in linetaleb.",
				"corrected the place of LTA-0001: it stands in linetaleb, not in linetale.",
				"LTA-0001 ceased to be linetale's champion white oak: it proved to stand elsewhere.",
				"LTA-0001 became linetaleb's champion white oak.");
	}

	@Test
	void aMeasurementsWayToItsVerifierIsTold() throws Exception {
		this.trees.county("movetale", "MVT");
		TestTrees.Filed filed = this.trees.standing("movetale", 100, "2020-05-02");
		TestPerson verifier = this.people.verifier("movetale");
		TestPerson coordinator = this.people.coordinator("movetale");
		String id = JsonPath.read(this.trees
			.ask(post("/api/v1/trees/" + filed.tree() + "/measurements").content(TestTrees.measurement(120, "2024-05")),
					this.people.volunteer("movetale"))
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString(), "$.id");
		String address = "/api/v1/measurements/" + id;
		this.trees
			.decide(address, "/moves", "{\"move\": \"assign\", \"verifier\": \"%s\"}".formatted(verifier.id()),
					coordinator)
			.andExpect(status().isOk());
		this.trees.decide(address, "/moves", "{\"move\": \"hand-back\", \"reason\": \"too far\"}", verifier)
			.andExpect(status().isOk());
		String inside = this.trees.ask(get("/api/v1/trees/MVT-0001/story"), coordinator)
			.andReturn()
			.getResponse()
			.getContentAsString();
		assertThat(String.join("\n", sentences(inside))).containsSubsequence(
				"filed the measurement of MVT-0001 taken in May 2024: 210 points.",
				coordinator.creditName() + " gave the measurement of MVT-0001 taken in May 2024 to "
						+ verifier.creditName() + " to verify.",
				verifier.creditName() + " handed the measurement of MVT-0001 taken in May 2024 back undecided.");
		assertThat(told("/api/v1/trees/MVT-0001/story")).doesNotContain("May 2024");
	}

	@Test
	void aFoldIsToldInTheStoryOfTheSpeciesItFellTo() throws Exception {
		this.trees.county("foldtale", "FDT");
		TestPerson coordinator = this.people.coordinator("foldtale");
		TestPerson administrator = this.people.administrator();
		for (String epithet : List.of("maior", "minor")) {
			this.trees.ask(post("/api/v1/species").content("""
					{"scientificName": "Fabulatio %s", "authority": "Probator", "source": "Flora of Nowhere",
					 "commonName": "%s fable"}""".formatted(epithet, epithet)), coordinator)
				.andExpect(status().isCreated());
		}
		TestTrees.Filed filed = this.trees.nominate("foldtale", this.people.volunteer("foldtale"), "fabulatio-minor",
				TestTrees.measurement(100, "2024-05-02"));
		this.trees.signOff(filed.measurement(), this.people.verifier("foldtale"), "{\"verdict\": \"confirmed\"}")
			.andExpect(status().isCreated());
		this.trees
			.ask(post("/api/v1/species/fabulatio-minor/fold")
				.content("{\"into\": \"fabulatio-maior\", \"reason\": \"one species\"}"), administrator)
			.andExpect(status().isOk());
		assertThat(lastOf("/api/v1/counties/foldtale/species/fabulatio-maior/story"))
			.startsWith(administrator.creditName() + " recorded that minor fable is now counted as maior fable.")
			.contains("FDT-0001 came into foldtale's maior fable ranking with 190 points and took first place.");
		assertThat(lastOf("/api/v1/trees/FDT-0001/story"))
			.contains("FDT-0001 ceased to be foldtale's champion minor fable: its species is counted as another.");
	}

	private void decide(TestTrees.Filed filed, String action, String body, TestPerson person) throws Exception {
		this.trees.decide("/api/v1/trees/" + filed.tree(), action, body, person).andExpect(status().is2xxSuccessful());
	}

	private String told(String address) throws Exception {
		return this.mvc.perform(get(address)).andExpect(status().isOk()).andReturn().getResponse().getContentAsString();
	}

	private String lastOf(String address) throws Exception {
		List<String> sentences = sentences(told(address));
		return sentences.get(sentences.size() - 1);
	}

	private static List<String> sentences(String story) {
		return JsonPath.read(story, "$.items[*].sentence");
	}

}

package county.bigtree.registry.signoff;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import county.bigtree.registry.TestTrees;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.endsWith;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Filed figures beside the verifier's own. All figures are worked by hand from the
 * defaults: a taped girth of up to 148 in is uncertain by 0.37 in, and its tolerance is 1
 * % of the checked one (proposals of this register).
 */
@RegistryTest
class AgreementHttpIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	/**
	 * 101 in for 100 in: within 1.01 in; E_n = 1 / (2 √2 × 0.37) = 0.96; the mean 100.5
	 * in, its uncertainty widened to half the difference (two of equal weight).
	 */
	@Test
	void tellsOfEachFigureHowItStandsToItsCheck() throws Exception {
		TestTrees.Filed filed = file("agreeton", "AGR", "2026-05-02");
		TestPerson verifier = this.people.verifier("agreeton");
		ResultActions signed = confirm(filed, verifier, 101, "2026-05-20").andExpect(status().isCreated())
			.andExpect(jsonPath("$.agreement[*].figure").value(contains("girth", "height", "crown")))
			.andExpect(jsonPath("$.agreement[*].verdict").value(contains("agrees", "agrees", "agrees")))
			.andExpect(jsonPath("$.agreement[0].filed").value(100.0))
			.andExpect(jsonPath("$.agreement[0].checked").value(101.0))
			.andExpect(jsonPath("$.agreement[0].difference").value(1.0))
			.andExpect(jsonPath("$.agreement[0].tolerance").value(1.01))
			.andExpect(jsonPath("$.agreement[0].enScore").value(0.96))
			.andExpect(jsonPath("$.agreement[0].repeatabilityLimit").value(4.2))
			.andExpect(jsonPath("$.agreement[0].allowedGrowth").value((Object) null))
			.andExpect(jsonPath("$.agreement[0].combined.value").value(100.5))
			.andExpect(jsonPath("$.agreement[0].combined.standardUncertainty").value(0.5))
			.andExpect(jsonPath("$.agreement[0].sentence")
				.value("The filed girth of 100 in and the checked one of 101 in agree."));
		String signOff = JsonPath.read(signed.andReturn().getResponse().getContentAsString(), "$.id");
		this.trees.ask(get("/api/v1/measurements/" + filed.measurement()), filed.filer())
			.andExpect(jsonPath("$.agreements.length()").value(1))
			.andExpect(jsonPath("$.agreements[0].signOff").value(signOff))
			.andExpect(jsonPath("$.agreements[0].figures[0].difference").value(1.0));
		this.mvc.perform(get("/api/v1/trees/" + filed.tree() + "/measurements"))
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.items.length()").value(2))
			.andExpect(jsonPath("$.items[0].agreements.length()").value(0))
			.andExpect(jsonPath("$.items[1].agreements.length()").value(0));
	}

	@Test
	void refusesToConfirmBeyondTheToleranceAndSaysByHowMuch() throws Exception {
		TestTrees.Filed filed = file("beyondton", "AGS", "2026-05-02");
		TestPerson verifier = this.people.verifier("beyondton");
		confirm(filed, verifier, 110, "2026-05-20").andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.type").value("/problems/refused"))
			.andExpect(jsonPath("$.detail").value("The filed girth of 100 in differs from yours of 110 in by 10 in: "
					+ "more than 1.1 in. The figures can't be confirmed: choose corrected or not-confirmed."));
		signOff(filed, verifier, "not-confirmed", 110, "2026-05-20").andExpect(status().isCreated())
			.andExpect(jsonPath("$.agreement[0].verdict").value("disagrees"))
			.andExpect(jsonPath("$.agreement[0].withinTolerance").value(false))
			.andExpect(jsonPath("$.agreement[0].combined").value((Object) null));
	}

	/**
	 * White oak, of moderate growth: in ten years (3652 days) up to 2 π × 0.2 in × 9.9986
	 * = 12.56 in, and up to 0.5 in less for bark (proposal).
	 */
	@Test
	void allowsForWhatTheTreeMayHaveGrownBetweenTheVisits() throws Exception {
		TestTrees.Filed filed = file("growton", "AGT", "2016-05-02");
		TestPerson verifier = this.people.verifier("growton");
		confirm(filed, verifier, 115, "2026-05-02").andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.detail")
				.value("The filed girth of 100 in differs from yours of 115 in by 15 in, of which growth between the visits "
						+ "explains all but 2.435 in: more than 1.15 in. The figures can't be confirmed: choose corrected "
						+ "or not-confirmed."));
		confirm(filed, verifier, 110, "2026-05-02").andExpect(status().isCreated())
			.andExpect(jsonPath("$.agreement[0].difference").value(10.0))
			.andExpect(jsonPath("$.agreement[0].allowedGrowth.least").value(-0.5))
			.andExpect(jsonPath("$.agreement[0].allowedGrowth.most").value(12.56))
			.andExpect(jsonPath("$.agreement[0].unexplained").value(0.0))
			.andExpect(jsonPath("$.agreement[0].verdict").value("agrees"))
			.andExpect(jsonPath("$.agreement[0].combined").value((Object) null));
	}

	/** What was judged stays, though the county's tolerance for the past is changed. */
	@Test
	void keepsWhatWasJudgedWhateverTheRulesBecome() throws Exception {
		TestTrees.Filed filed = file("keepton", "AGU", "2026-05-02");
		TestPerson verifier = this.people.verifier("keepton");
		String answer = confirm(filed, verifier, 101, "2026-05-20").andReturn().getResponse().getContentAsString();
		this.trees
			.ask(post("/api/v1/counties/keepton/rulebooks").content("""
					{"effectiveOn": "2026-01-01", "oldestFilingMonths": 1200, "tolerances": {"girthInchesPerStep": 0,
					 "girthShare": 0.001, "heightShare": 0.1, "spreadShare": 0.1, "spreadFeet": 4}}"""),
					this.people.coordinator("keepton"))
			.andExpect(status().isCreated());
		this.trees.ask(get("/api/v1/sign-offs/" + JsonPath.<String>read(answer, "$.id")), verifier)
			.andExpect(jsonPath("$.agreement[0].tolerance").value(1.01))
			.andExpect(jsonPath("$.agreement[0].verdict").value("agrees"));
		TestTrees.Filed next = this.trees.nominate("keepton", this.people.verifier("keepton"), "quercus-alba",
				TestTrees.measurement(100, "2026-05-02"));
		confirm(next, verifier, 101, "2026-05-20").andExpect(status().isUnprocessableContent())
			.andExpect(jsonPath("$.detail").value(endsWith(
					"more than 0.101 in. The figures can't be confirmed: choose corrected or not-confirmed.")));
	}

	private TestTrees.Filed file(String county, String prefix, String measuredOn) throws Exception {
		this.trees.county(county, prefix);
		return this.trees.nominate(county, this.people.verifier(county), "quercus-alba",
				TestTrees.measurement(100, measuredOn));
	}

	private ResultActions confirm(TestTrees.Filed filed, TestPerson verifier, int girth, String on) throws Exception {
		return signOff(filed, verifier, "confirmed", girth, on);
	}

	private ResultActions signOff(TestTrees.Filed filed, TestPerson verifier, String verdict, int girth, String on)
			throws Exception {
		return this.trees.signOff(filed.measurement(), verifier,
				"{\"verdict\": \"%s\", \"measurement\": {\"measuredOn\": \"%s\", %s, %s}}".formatted(verdict, on,
						TestTrees.readings(girth), TestTrees.CONFIRMED));
	}

}

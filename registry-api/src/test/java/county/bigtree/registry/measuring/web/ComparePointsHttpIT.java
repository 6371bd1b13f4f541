package county.bigtree.registry.measuring.web;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * How readings stand among trees of 190 points, by each of the tie rules. Worked by hand:
 * each score's standard uncertainty is √(0.37² + 0.3² + (0.8485 / 4)²) = 0.5214 points,
 * that of a margin √2 times as much, 0.7374. Probabilities are of the normal
 * distribution; those of leading all were integrated apart from this program.
 */
@RegistryTest
class ComparePointsHttpIT {

	private static final String RULES = "{\"effectiveOn\": \"1800-01-01\", \"oldestFilingMonths\": 1200, \"tieRule\": %s}";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Test
	void saysWhatATitleTakesWithinPoints() throws Exception {
		standing("shareton", "CPA", "{\"kind\": \"points\", \"n\": 5}", 100);
		compare("shareton", 92).andExpect(jsonPath("$.comparison.wouldHold").value((Object) null))
			.andExpect(jsonPath("$.comparison.leaderPoints").value(190.0))
			.andExpect(jsonPath("$.comparison.behind").value(8.0))
			.andExpect(jsonPath("$.comparison.wouldRank").value(2))
			.andExpect(jsonPath("$.comparison.toLead").value(8.0))
			.andExpect(jsonPath("$.comparison.toShare").value(3.0))
			.andExpect(jsonPath("$.comparison.aheadOfLeaderProbability").value(0.0))
			.andExpect(jsonPath("$.comparison.clarity").value("clear"));
		compare("shareton", 100).andExpect(jsonPath("$.comparison.wouldHold").value("champion"))
			.andExpect(jsonPath("$.comparison.toLead").value(0.0))
			.andExpect(jsonPath("$.comparison.aheadOfLeaderProbability").value(0.5))
			.andExpect(jsonPath("$.comparison.clarity").value("too-close"))
			.andExpect(jsonPath("$.comparison.leadsAllProbability").value(0.5));
	}

	/** 1 % of 190 points are 1.9. */
	@Test
	void saysWhatATitleTakesWithinPercent() throws Exception {
		standing("percentton", "CPB", "{\"kind\": \"percent\", \"n\": 1}", 100);
		compare("percentton", 98).andExpect(jsonPath("$.comparison.wouldHold").value((Object) null))
			.andExpect(jsonPath("$.comparison.toLead").value(2.0))
			.andExpect(jsonPath("$.comparison.toShare").value(0.1));
		compare("percentton", 99).andExpect(jsonPath("$.comparison.wouldHold").value("co-champion"))
			.andExpect(jsonPath("$.comparison.toShare").value(0.0));
	}

	/**
	 * 2 × 0.7374 = 1.4748 points: 188.53 is the least that shares. A margin of one point
	 * is right with Φ(1 / 0.7374) = 0.9125; over two trees at once with 0.8518.
	 */
	@Test
	void saysWhatATitleTakesWithinUncertaintyAndHowSurelyATreeLeads() throws Exception {
		standing("sureton", "CPC", "{\"kind\": \"uncertainty\", \"k\": 2, \"atMost\": 6}", 100);
		compare("sureton", 97).andExpect(jsonPath("$.comparison.wouldHold").value((Object) null))
			.andExpect(jsonPath("$.comparison.toLead").value(3.0))
			.andExpect(jsonPath("$.comparison.toShare").value(1.53));
		compare("sureton", 99).andExpect(jsonPath("$.comparison.wouldHold").value("co-champion"))
			.andExpect(jsonPath("$.comparison.aheadOfLeaderProbability").value(0.0875))
			.andExpect(jsonPath("$.comparison.clarity").value("likely"));
		this.trees.standing("sureton", 100, "2026-05-02");
		compare("sureton", 101).andExpect(jsonPath("$.comparison.wouldHold").value("champion"))
			.andExpect(jsonPath("$.comparison.behind").value(0))
			.andExpect(jsonPath("$.comparison.wouldRank").value(1))
			.andExpect(jsonPath("$.comparison.aheadOfLeaderProbability").value(0.9125))
			.andExpect(jsonPath("$.comparison.leadsAllProbability").value(0.8518));
		this.trees.standing("sureton", 101, "2026-05-02");
		this.trees.oaks("sureton")
			.andExpect(jsonPath("$.items[0].lead").value(1.0))
			.andExpect(jsonPath("$.items[0].leadProbability").value(0.9125))
			.andExpect(jsonPath("$.items[0].leadClarity").value("likely"))
			.andExpect(jsonPath("$.items[0].leadsAllProbability").value(0.8518))
			.andExpect(jsonPath("$.items[1].leadProbability").value(0.5))
			.andExpect(jsonPath("$.items[1].leadClarity").value("too-close"))
			.andExpect(jsonPath("$.items[1].leadsAllProbability").value((Object) null))
			.andExpect(jsonPath("$.items[2].leadClarity").value((Object) null));
	}

	@Test
	void comparesWithBooksThatAreEmpty() throws Exception {
		this.trees.county("nobookton", "CPD");
		compare("nobookton", 50).andExpect(jsonPath("$.comparison.leaderPoints").value((Object) null))
			.andExpect(jsonPath("$.comparison.wouldHold").value("champion"))
			.andExpect(jsonPath("$.comparison.toLead").value(0.0))
			.andExpect(jsonPath("$.comparison.clarity").value((Object) null))
			.andExpect(jsonPath("$.comparison.leadsAllProbability").value((Object) null));
	}

	private void standing(String county, String prefix, String tieRule, int girth) throws Exception {
		this.trees.county(county, prefix, RULES.formatted(tieRule));
		this.trees.standing(county, girth, "2026-05-02");
	}

	private ResultActions compare(String county, int girth) throws Exception {
		return this.mvc
			.perform(post("/api/v1/measuring/points").contentType(MediaType.APPLICATION_JSON)
				.content("{\"species\": \"quercus-alba\", \"county\": \"%s\", %s}".formatted(county,
						TestTrees.readings(girth))))
			.andExpect(status().isOk());
	}

}

package county.bigtree.registry.signoff;

import java.util.Objects;
import java.util.UUID;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * A champion is passed by a rival's remeasurement and gets its title back when the rival
 * falls. 100 in, 80 ft and 40 ft give 190 points (girth + height + a quarter of the
 * spread: common practice, no source).
 */
@RegistryTest
class ChampionStoryIT {

	private static final String COUNTY = "storyton";

	private static final String STANDING = "/api/v1/counties/storyton/species/quercus-alba/standing";

	private static final String READINGS = """
			"measuredOn": "%s", "measuredBy": ["A. Finder"],
			"girth": {"method": "tape", "girth": {"value": %d, "unit": "in"}},
			"height": {"method": "pole", "height": {"value": 80, "unit": "ft"}},
			"crown": {"method": "axes", "axes": [{"value": 40, "unit": "ft"}, {"value": 40, "unit": "ft"}]},
			""" + TestTrees.CONFIRMED;

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestPeople people;

	@Test
	void passesTheTitleToARemeasuredRivalAndBackWhenItFalls() throws Exception {
		ask(post("/api/v1/counties").content("""
				{"key": "storyton", "name": "Storyton", "state": "Nowhere", "timeZone": "America/New_York",
				 "tagPrefix": "STY"}"""), this.people.administrator()).andExpect(status().isCreated());
		TestPerson volunteer = this.people.volunteer(COUNTY);
		TestPerson verifier = this.people.verifier(COUNTY);
		String first = nominate(volunteer, verifier, 100, "40.1");
		String rival = nominate(volunteer, verifier, 90, "40.2");
		String early = read(expectChampion(first, 190.0), "$.recordedThrough");

		String again = created(post("/api/v1/trees/" + rival + "/measurements")
			.content("{" + READINGS.formatted("2026-06-10", 110) + "}"), volunteer);
		expectChampion(first, 190.0);
		confirm(read(again, "$.id"), verifier);
		expectChampion(rival, 200.0);

		String report = created(post("/api/v1/trees/" + rival + "/condition-reports").content("""
				{"condition": "fallen", "observedOn": "2026-07-01", "remarks": "in the storm"}"""), volunteer);
		expectChampion(rival, 200.0);
		decideOnce(read(report, "$.id"), volunteer);
		expectChampion(first, 190.0);

		expectTitles(first, rival);
		this.mvc.perform(get("/api/v1/species").param("county", COUNTY))
			.andExpect(jsonPath("$.items.length()").value(1))
			.andExpect(jsonPath("$.items[0].key").value("quercus-alba"));
		this.mvc.perform(get("/api/v1/species").param("county", "nowhere"))
			.andExpect(jsonPath("$.items.length()").value(0));
		this.mvc.perform(get(STANDING).param("asOf", "2025-06-01")).andExpect(jsonPath("$.items.length()").value(0));
		this.mvc.perform(get(STANDING).param("knownAt", early))
			.andExpect(jsonPath("$.items.length()").value(2))
			.andExpect(jsonPath("$.items[0].tree").value(first))
			.andExpect(jsonPath("$.items[1].tree").value(rival))
			.andExpect(jsonPath("$.items[1].points").value(180.0));
	}

	private void decideOnce(String report, TestPerson volunteer) throws Exception {
		TestPerson coordinator = this.people.coordinator(COUNTY);
		String path = "/api/v1/condition-reports/" + report;
		String stale = tag(path, coordinator);
		ask(decision(path, stale), volunteer).andExpect(status().isForbidden());
		ask(post(path + "/decision").content("{\"accept\": true}"), coordinator)
			.andExpect(status().isPreconditionRequired());
		ask(decision(path, stale), coordinator).andExpect(status().isOk())
			.andExpect(jsonPath("$.status").value("accepted"));
		ask(decision(path, stale), coordinator).andExpect(status().isPreconditionFailed());
		ask(decision(path, tag(path, coordinator)), coordinator).andExpect(status().isConflict());
	}

	private static MockHttpServletRequestBuilder decision(String path, String tag) {
		return post(path + "/decision").content("{\"accept\": true, \"reason\": \"seen by the road crew\"}")
			.header(HttpHeaders.IF_MATCH, tag);
	}

	private void expectTitles(String first, String rival) throws Exception {
		this.mvc.perform(get("/api/v1/counties/storyton/species/quercus-alba/titles"))
			.andExpect(jsonPath("$.items.length()").value(3))
			.andExpect(jsonPath("$.items[0].tree").value(first))
			.andExpect(jsonPath("$.items[0].began").value("rival-left"))
			.andExpect(jsonPath("$.items[0].ended").isEmpty())
			.andExpect(jsonPath("$.items[1].tree").value(rival))
			.andExpect(jsonPath("$.items[1].began").value("signed-off"))
			.andExpect(jsonPath("$.items[1].ended").value("fell"))
			.andExpect(jsonPath("$.items[2].tree").value(first))
			.andExpect(jsonPath("$.items[2].began").value("signed-off"))
			.andExpect(jsonPath("$.items[2].ended").value("overtaken"));
	}

	private String nominate(TestPerson volunteer, TestPerson verifier, int girth, String latitude) throws Exception {
		String filed = created(post("/api/v1/counties/storyton/nominations")
			.content("{\"species\": \"quercus-alba\", \"location\": {\"latitude\": " + latitude
					+ ", \"longitude\": -86.2, \"accuracyMetres\": 8}, \"access\": \"public\", \"measurement\": {"
					+ READINGS.formatted("2026-05-02", girth) + "}}"),
				volunteer);
		confirm(read(filed, "$.measurement.id"), verifier);
		return read(filed, "$.tree");
	}

	private void confirm(String measurement, TestPerson verifier) throws Exception {
		created(post("/api/v1/measurements/" + measurement + "/sign-offs").content("{\"verdict\": \"confirmed\"}"),
				verifier);
	}

	private String expectChampion(String tree, double points) throws Exception {
		return this.mvc.perform(get(STANDING))
			.andExpect(status().isOk())
			.andExpect(jsonPath("$.items[0].tree").value(tree))
			.andExpect(jsonPath("$.items[0].title").value("champion"))
			.andExpect(jsonPath("$.items[0].points").value(points))
			.andReturn()
			.getResponse()
			.getContentAsString();
	}

	private String tag(String path, TestPerson person) throws Exception {
		return Objects.requireNonNull(ask(get(path), person).andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getHeader(HttpHeaders.ETAG));
	}

	private String created(MockHttpServletRequestBuilder request, TestPerson person) throws Exception {
		return ask(request, person).andExpect(status().isCreated()).andReturn().getResponse().getContentAsString();
	}

	private static String read(String json, String path) {
		return JsonPath.<String>read(json, path);
	}

	private ResultActions ask(MockHttpServletRequestBuilder request, TestPerson person) throws Exception {
		return this.mvc.perform(request.contentType(MediaType.APPLICATION_JSON)
			.header("Idempotency-Key", UUID.randomUUID().toString())
			.header(HttpHeaders.AUTHORIZATION, person.bearer()));
	}

}

package county.bigtree.registry;

import java.util.UUID;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.jspecify.annotations.Nullable;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.test.web.servlet.request.MockMultipartHttpServletRequestBuilder;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Founds counties and files trees over HTTP for tests. Height 80 ft and spread 40 ft add
 * 90 points to the girth in inches.
 */
@Component
public class TestTrees {

	/**
	 * The field that answers whatever is asked: most trees of the tests stand at one
	 * place, and in no proportion.
	 */
	public static final String CONFIRMED = """
			"confirmedChecks": ["unit-slip", "odd-proportions", "too-slender", "near-buckling", "beyond-species-limit",
			  "biggest-by-far", "new-to-county", "girth-shrank", "girth-outgrew", "before-earlier-visit", "likely-same-tree", "lacking-figure", "species-not-eligible"]""";

	private static final String LATE = "{\"effectiveOn\": \"1800-01-01\", \"oldestFilingMonths\": 1200}";

	private static final String READINGS = """
			"girth": {"method": "tape", "girth": {"value": %d, "unit": "in"}},
			"height": {"method": "pole", "height": {"value": 80, "unit": "ft"}},
			"crown": {"method": "axes", "axes": [{"value": 40, "unit": "ft"}, {"value": 40, "unit": "ft"}]}""";

	private final ObjectProvider<MockMvc> mvc;

	private final TestPeople people;

	TestTrees(ObjectProvider<MockMvc> mvc, TestPeople people) {
		this.mvc = mvc;
		this.people = people;
	}

	/** Readings of a tree of so many inches, without the braces. */
	public static String readings(int girthInches) {
		return READINGS.formatted(girthInches);
	}

	/** A measurement of a tree of so many inches. */
	public static String measurement(int girthInches, String measuredOn, String... measuredBy) {
		String names = (measuredBy.length == 0) ? "A. Finder" : String.join("\", \"", measuredBy);
		return "{\"measuredOn\": \"%s\", \"measuredBy\": [\"%s\"], %s, %s}".formatted(measuredOn, names,
				readings(girthInches), CONFIRMED);
	}

	public void county(String key, String prefix) throws Exception {
		county(key, prefix, null);
	}

	/**
	 * Founds a county.
	 * @param rulebook its first rules as JSON, or null for the defaults
	 */
	public void county(String key, String prefix, @Nullable String rulebook) throws Exception {
		found(key, prefix, ", \"rulebook\": " + ((rulebook != null) ? rulebook : LATE));
	}

	/** Founds a county for practice. */
	public void practiceCounty(String key, String prefix) throws Exception {
		found(key, prefix, ", \"practice\": true, \"rulebook\": " + LATE);
	}

	/**
	 * A county that says nothing of its rules lets what is years old be filed, so that
	 * tests needn't wait for years.
	 */
	private void found(String key, String prefix, String more) throws Exception {
		ask(post("/api/v1/counties").content("""
				{"key": "%s", "name": "%s", "state": "Nowhere", "timeZone": "America/New_York", "tagPrefix": "%s"%s}"""
			.formatted(key, key, prefix, more)), this.people.administrator()).andExpect(status().isCreated());
	}

	/**
	 * Nominates a tree with the measurement.
	 */
	public Filed nominate(String county, TestPerson filer, String species, String measurement) throws Exception {
		String body = "{\"species\": \"%s\", \"location\": {\"latitude\": 40.1, \"longitude\": -86.2, \"accuracyMetres\": 8}, \"access\": \"public\", \"measurement\": %s}"
			.formatted(species, measurement);
		String answer = ask(post("/api/v1/counties/" + county + "/nominations").content(body), filer)
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
		return new Filed(filer, JsonPath.read(answer, "$.id"), JsonPath.read(answer, "$.tree"),
				JsonPath.read(answer, "$.measurement.id"));
	}

	/**
	 * A white oak of so many inches, nominated and confirmed by a new verifier.
	 */
	public Filed standing(String county, int girthInches, String measuredOn) throws Exception {
		Filed filed = nominate(county, this.people.volunteer(county), "quercus-alba",
				measurement(girthInches, measuredOn));
		signOff(filed.measurement(), this.people.verifier(county), "{\"verdict\": \"confirmed\"}")
			.andExpect(status().isCreated());
		return filed;
	}

	public ResultActions signOff(String measurement, TestPerson signer, String body) throws Exception {
		return ask(post("/api/v1/measurements/" + measurement + "/sign-offs").content(body), signer);
	}

	/** The standing of the white oaks. */
	public ResultActions oaks(String county) throws Exception {
		return this.mvc.getObject()
			.perform(get("/api/v1/counties/" + county + "/species/quercus-alba/standing"))
			.andExpect(status().isOk());
	}

	/** The titles of the white oaks. */
	public ResultActions oakTitles(String county) throws Exception {
		return this.mvc.getObject()
			.perform(get("/api/v1/counties/" + county + "/species/quercus-alba/titles"))
			.andExpect(status().isOk());
	}

	public ResultActions ask(MockHttpServletRequestBuilder request, TestPerson person) throws Exception {
		return this.mvc.getObject()
			.perform(request.contentType(MediaType.APPLICATION_JSON)
				.header("Idempotency-Key", UUID.randomUUID().toString())
				.header(HttpHeaders.AUTHORIZATION, person.bearer()));
	}

	/** Sends a file. */
	public ResultActions send(MockMultipartHttpServletRequestBuilder request, TestPerson person) throws Exception {
		return this.mvc.getObject()
			.perform(request.header("Idempotency-Key", UUID.randomUUID().toString())
				.header(HttpHeaders.AUTHORIZATION, person.bearer()));
	}

	/** Decides with the ETag of what the person sees at the address. */
	public ResultActions decide(String address, String action, String body, TestPerson person) throws Exception {
		String tag = ask(get(address), person).andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getHeader(HttpHeaders.ETAG);
		return ask(post(address + action).content(body).header(HttpHeaders.IF_MATCH, String.valueOf(tag)), person);
	}

	/** A tree just nominated. */
	public record Filed(TestPerson filer, String nomination, String tree, String measurement) {
	}

}

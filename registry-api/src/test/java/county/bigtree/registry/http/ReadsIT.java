package county.bigtree.registry.http;

import county.bigtree.registry.Problems;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.people.TestPeople;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.json.JsonCompareMode;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.head;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

@RegistryTest
class ReadsIT {

	private static final String NUMBERS = "/api/v1/convention-tests/numbers";

	private static final String OAK = "/api/v1/convention-tests/things/oak";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestPeople people;

	@Test
	void answersNotModifiedToWhoHasTheBytes() throws Exception {
		String etag = etag(get(NUMBERS));
		assertThat(etag).matches("\"[A-Za-z0-9_-]{20}\"");
		for (String held : new String[] { etag, "W/" + etag, "\"other\", " + etag, "*" }) {
			this.mvc.perform(get(NUMBERS).header(HttpHeaders.IF_NONE_MATCH, held))
				.andExpect(status().isNotModified())
				.andExpect(header().string(HttpHeaders.ETAG, etag))
				.andExpect(content().string(""));
		}
		this.mvc.perform(get(NUMBERS).header(HttpHeaders.IF_NONE_MATCH, "\"other\"")).andExpect(status().isOk());
	}

	@Test
	void tagsOtherBytesOtherwise() throws Exception {
		assertThat(etag(get(NUMBERS + "?upTo=6"))).isNotEqualTo(etag(get(NUMBERS)));
	}

	@Test
	void tagsAHeadLikeItsGet() throws Exception {
		assertThat(etag(head(NUMBERS))).isEqualTo(etag(get(NUMBERS)));
	}

	@Test
	void letsOnlyWhatAnyoneMayReadBeKept() throws Exception {
		this.mvc.perform(get(NUMBERS))
			.andExpect(header().string(HttpHeaders.CACHE_CONTROL, "public, max-age=0, must-revalidate"));
		this.mvc.perform(get(NUMBERS).header(HttpHeaders.AUTHORIZATION, this.people.with().bearer()))
			.andExpect(header().string(HttpHeaders.CACHE_CONTROL, "private, no-store"));
	}

	@Test
	void putsTheRevisionBeforeTheHash() throws Exception {
		assertThat(etag(get(OAK))).matches("\"7-[A-Za-z0-9_-]{20}\"");
	}

	@Test
	void asksWhatADecisionWasMadeOn() throws Exception {
		for (String none : new String[] { "", "*" }) {
			this.mvc.perform(post(OAK + "/decision").header(HttpHeaders.IF_MATCH, none))
				.andExpect(status().isPreconditionRequired())
				.andExpect(Problems.problem("""
						{"type": "/problems/precondition-missing", "title": "Say what you decided on", "status": 428,
						 "detail": "Send the ETag of what you decided on in an If-Match header.",
						 "instance": "/api/v1/convention-tests/things/oak/decision"}"""));
		}
	}

	@Test
	void judgesADecisionByTheRevisionAlone() throws Exception {
		for (String held : new String[] { etag(get(OAK)), "\"7-whatever\"", "\"3-x\", \"7-x\"" }) {
			this.mvc.perform(post(OAK + "/decision").header(HttpHeaders.IF_MATCH, held))
				.andExpect(status().isOk())
				.andExpect(header().string(HttpHeaders.ETAG, org.hamcrest.Matchers.startsWith("\"8-")));
		}
	}

	@Test
	void answersAStaleDecisionWithThePresentState() throws Exception {
		for (String held : new String[] { "\"6-x\"", "W/\"7-x\"", "\"77-x\"", "nonsense" }) {
			this.mvc.perform(post(OAK + "/decision").header(HttpHeaders.IF_MATCH, held))
				.andExpect(status().isPreconditionFailed())
				.andExpect(header().string(HttpHeaders.ETAG, "\"7-present\""))
				.andExpect(Problems.problem("""
						{"type": "/problems/stale", "title": "Someone was faster", "status": 412,
						 "detail": "This has changed since you read it. Look at its present state and decide again.",
						 "instance": "/api/v1/convention-tests/things/oak/decision",
						 "present": {"name": "oak", "call": 0, "revision": 7}}"""));
		}
	}

	@Test
	void leadsFromPageToPage() throws Exception {
		MockHttpServletResponse first = this.mvc.perform(get(NUMBERS + "?upTo=5&limit=3"))
			.andExpect(content().json("{\"items\": [1, 2, 3]}"))
			.andReturn()
			.getResponse();
		String link = String.valueOf(first.getHeader(HttpHeaders.LINK));
		assertThat(link)
			.matches("</api/v1/convention-tests/numbers\\?upTo=5&limit=3&cursor=[A-Za-z0-9_-]+>; rel=\"next\"");
		this.mvc.perform(get(java.net.URI.create(link.substring(1, link.indexOf('>')))))
			.andExpect(header().doesNotExist(HttpHeaders.LINK))
			.andExpect(content().json("{\"items\": [4, 5], \"next\": null}", JsonCompareMode.STRICT));
	}

	@Test
	void refusesACursorItNeverGaveOut() throws Exception {
		this.mvc.perform(get(NUMBERS + "?cursor=abc")).andExpect(status().isBadRequest()).andExpect(Problems.problem("""
				{"type": "/problems/invalid-parameter", "title": "A parameter is wrong", "status": 400,
				 "detail": "The cursor is not one that this list gave out. Start again without it.",
				 "instance": "/api/v1/convention-tests/numbers", "parameter": "cursor"}"""));
	}

	private String etag(MockHttpServletRequestBuilder read) throws Exception {
		return String.valueOf(this.mvc.perform(read)
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getHeader(HttpHeaders.ETAG));
	}

}

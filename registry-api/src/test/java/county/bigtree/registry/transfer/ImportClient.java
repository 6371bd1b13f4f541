package county.bigtree.registry.transfer;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.UUID;

import com.jayway.jsonpath.DocumentContext;
import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.mock.web.MockPart;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.test.web.servlet.request.MockMvcRequestBuilders;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.delete;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Founds counties and imports files as a coordinator does, over HTTP.
 */
class ImportClient {

	private static final Duration PATIENCE = Duration.ofSeconds(120);

	private final MockMvc mvc;

	private final TestPeople people;

	ImportClient(MockMvc mvc, TestPeople people) {
		this.mvc = mvc;
		this.people = people;
	}

	/** Founds a county and answers a coordinator of it. */
	TestPerson county(String key, String prefix, String more) throws Exception {
		String body = """
				{"key": "%s", "name": "%s", "state": "Nowhere", "timeZone": "America/Boise", "tagPrefix": "%s"%s}"""
			.formatted(key, key, prefix, more);
		this.mvc
			.perform(MockMvcRequestBuilders.post("/api/v1/counties")
				.contentType(MediaType.APPLICATION_JSON)
				.content(body)
				.header(HttpHeaders.AUTHORIZATION, this.people.administrator().bearer()))
			.andExpect(status().isCreated());
		return this.people.coordinator(key);
	}

	ResultActions send(String county, TestPerson person, byte[] file, String mapping) throws Exception {
		return this.mvc.perform(multipart("/api/v1/counties/" + county + "/imports")
			.part(new MockPart("file", "trees.csv", file),
					new MockPart("mapping", mapping.getBytes(StandardCharsets.UTF_8)))
			.header("Idempotency-Key", UUID.randomUUID().toString())
			.header(HttpHeaders.AUTHORIZATION, person.bearer()));
	}

	/** Sends a file and waits until it has been worked through. */
	DocumentContext run(String county, TestPerson person, byte[] file, String mapping) throws Exception {
		String location = send(county, person, file, mapping).andExpect(status().isAccepted())
			.andReturn()
			.getResponse()
			.getHeader(HttpHeaders.LOCATION);
		return finished(String.valueOf(location), person);
	}

	DocumentContext finished(String location, TestPerson person) throws Exception {
		Instant end = Instant.now().plus(PATIENCE);
		DocumentContext job = JsonPath.parse(read(location, person));
		while (job.read("$.finishedAt") == null) {
			if (Instant.now().isAfter(end)) {
				throw new AssertionError("not finished: " + job.jsonString());
			}
			Thread.sleep(50);
			job = JsonPath.parse(read(location, person));
		}
		return job;
	}

	/** Decides on a resource as it is now. */
	ResultActions decide(String resource, String decision, TestPerson person, String body) throws Exception {
		return post(resource + decision, person, body,
				ask(resource, person).andReturn().getResponse().getHeader(HttpHeaders.ETAG));
	}

	ResultActions post(String path, TestPerson person, String body, @Nullable String ifMatch) throws Exception {
		MockHttpServletRequestBuilder request = MockMvcRequestBuilders.post(path)
			.contentType(MediaType.APPLICATION_JSON)
			.content(body)
			.header("Idempotency-Key", UUID.randomUUID().toString())
			.header(HttpHeaders.AUTHORIZATION, person.bearer());
		return this.mvc.perform((ifMatch != null) ? request.header(HttpHeaders.IF_MATCH, ifMatch) : request);
	}

	ResultActions erase(String path, TestPerson person) throws Exception {
		return this.mvc.perform(delete(path).header("Idempotency-Key", UUID.randomUUID().toString())
			.header(HttpHeaders.AUTHORIZATION, person.bearer()));
	}

	String read(String path, TestPerson person) throws Exception {
		return ask(path, person).andExpect(status().isOk()).andReturn().getResponse().getContentAsString();
	}

	ResultActions ask(String path, TestPerson person) throws Exception {
		return this.mvc.perform(get(path).header(HttpHeaders.AUTHORIZATION, person.bearer()));
	}

}

package county.bigtree.registry.description;

import java.nio.charset.StandardCharsets;

import org.junit.jupiter.api.Test;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

/**
 * Shows that the check on every answer finds what it is there to find.
 */
class ContractTest {

	private static final Contract CONTRACT = new Contract(JsonMapper.builder().build(), """
			{"openapi": "3.1.0",
			 "paths": {"/api/v1/trees/{tree}": {"post": {
			  "requestBody": {"content": {"application/json": {"schema": {"$ref": "#/components/schemas/Wanted"}}}},
			  "responses": {
			   "201": {"headers": {"Location": {"required": true}},
			    "content": {"application/json": {"schema": {"$ref": "#/components/schemas/Tree"}}}},
			   "404": {"$ref": "#/components/responses/not-found"}}}}},
			 "components": {
			  "responses": {"not-found": {"content": {"application/problem+json": {"schema":
			   {"properties": {"type": {"enum": ["/problems/not-found"]}}}}}}},
			  "schemas": {
			   "Wanted": {"type": "object", "properties": {"on": {"type": "string", "format": "date"}}},
			   "Tree": {"type": "object", "required": ["tag"],
			    "properties": {"tag": {"type": "string"}, "rank": {"type": ["integer", "null"]}}}}}}""");

	private static final String WANTED = "{\"on\": \"2026-11-01\"}";

	@Test
	void takesAnAnswerAsDescribed() {
		assertThatCode(
				() -> check(201, "application/json;charset=UTF-8", "{\"tag\": \"LM-1\", \"rank\": null}", WANTED))
			.doesNotThrowAnyException();
		assertThatCode(() -> check(404, "application/problem+json", "{\"type\": \"/problems/not-found\"}", WANTED))
			.doesNotThrowAnyException();
	}

	@Test
	void findsAFieldThatIsMissingOrOfAnotherTypeOrNotDescribed() {
		assertFault("required property 'tag'", 201, "{\"rank\": 1}");
		assertFault("string found", 201, "{\"tag\": \"LM-1\", \"rank\": \"1\"}");
		assertFault("points", 201, "{\"tag\": \"LM-1\", \"points\": 1}");
	}

	@Test
	void findsAStatusAndAContentTypeThatAreNotDescribed() {
		assertFault("answers 200, which is not described", 200, "{\"tag\": \"LM-1\"}");
		assertThatThrownBy(() -> check(201, "text/csv", "tag", WANTED))
			.hasMessageContaining("answers text/csv, which is not described");
	}

	@Test
	void findsAProblemThatIsNotNamed() {
		assertThatThrownBy(() -> check(404, "application/problem+json", "{\"type\": \"/problems/stale\"}", WANTED))
			.isInstanceOf(AssertionError.class)
			.hasMessageContaining("/type");
	}

	@Test
	void findsARequestThatWasTakenThoughItIsNotAsDescribed() {
		assertThatThrownBy(() -> check(201, "application/json", "{\"tag\": \"LM-1\"}", "{\"on\": \"yesterday\"}"))
			.isInstanceOf(AssertionError.class)
			.hasMessageContaining("/on");
	}

	@Test
	void findsAHeaderThatIsMissing() {
		MockHttpServletResponse answer = new MockHttpServletResponse();
		answer.setStatus(201);
		assertThatThrownBy(() -> ContractCheck.check(CONTRACT, request("/api/v1/trees/LM-1", WANTED), answer))
			.hasMessageContaining("Location");
	}

	@Test
	void findsAnEndpointThatIsNotDescribed() {
		MockHttpServletResponse answer = new MockHttpServletResponse();
		assertThatThrownBy(() -> ContractCheck.check(CONTRACT, request("/api/v1/shrubs", WANTED), answer))
			.hasMessageContaining("post /api/v1/shrubs is not described");
	}

	private static void assertFault(String expected, int status, String body) {
		assertThatThrownBy(() -> check(status, "application/json", body, WANTED)).isInstanceOf(AssertionError.class)
			.hasMessageContaining(expected);
	}

	private static void check(int status, String type, String body, String sent) throws Exception {
		MockHttpServletResponse answer = new MockHttpServletResponse();
		answer.setStatus(status);
		answer.setHeader("Location", "/api/v1/trees/LM-1");
		answer.setContentType(type);
		answer.getWriter().write(body);
		ContractCheck.check(CONTRACT, request("/api/v1/trees/LM-1", sent), answer);
	}

	private static MockHttpServletRequest request(String path, String body) {
		MockHttpServletRequest request = new MockHttpServletRequest("POST", path);
		request.setCharacterEncoding("UTF-8");
		request.setContent(body.getBytes(StandardCharsets.UTF_8));
		return request;
	}

}

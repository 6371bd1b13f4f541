package county.bigtree.registry.description;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

import county.bigtree.registry.RegistryTest;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

@RegistryTest
class ApiDescriptionIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private JsonMapper json;

	@Test
	void isOpenApi31() throws Exception {
		JsonNode api = api();
		assertThat(api.path("openapi").stringValue()).startsWith("3.1.");
		assertThat(api.at("/info/title").stringValue()).isEqualTo("County big-tree registry");
		assertThat(api.at("/components/securitySchemes").propertyNames()).containsExactlyInAnyOrder("token", "session",
				"password");
	}

	@Test
	void saysTheSameInYaml() throws Exception {
		this.mvc.perform(get("/openapi.yaml"))
			.andExpect(status().isOk())
			.andExpect(content().string(containsString("openapi: 3.1.0")));
		this.mvc.perform(get("/openapi.json.yaml"))
			.andExpect(status().isOk())
			.andExpect(content().string(containsString("openapi: 3.1.")))
			.andExpect(content().string(containsString("County big-tree registry")));
	}

	@Test
	void everyOperationHasAnIdAndSaysWhatItDoesAndWhoMay() throws Exception {
		Set<String> ids = new HashSet<>();
		assertThat(operations()).isNotEmpty().allSatisfy((operation) -> {
			JsonNode described = operation.getValue();
			assertThat(described.path("x-who-may").isString()).isTrue();
			assertThat(described.path("summary").isString()).isTrue();
			assertThat(described.path("description").stringValue("")).isNotBlank();
			assertThat(ids.add(described.path("operationId").stringValue(""))).isTrue();
			assertThat(described.path("operationId").stringValue("")).matches("[a-z][A-Za-z]+");
		});
	}

	@Test
	void describesEveryTagThatIsUsed() throws Exception {
		Map<String, String> tags = new HashMap<>();
		api().path("tags")
			.forEach((tag) -> tags.put(tag.path("name").stringValue(""), tag.path("description").stringValue("")));
		assertThat(tags).doesNotContainValue("");
		assertThat(operations()).allSatisfy((operation) -> assertThat(operation.getValue().path("tags")).singleElement()
			.satisfies((tag) -> assertThat(tags).containsKey(tag.stringValue(""))));
	}

	/**
	 * A file of the name that is missing mends it, see {@link Examples}.
	 */
	@Test
	void showsAnExampleOfEveryBodyAsItIsDescribed() throws Exception {
		Contract contract = new Contract(this.json, api().toString());
		List<String> faults = new ArrayList<>();
		operations().forEach((operation) -> {
			faults.addAll(faultsOfExamples(contract, operation.getKey() + " takes",
					operation.getValue().path("requestBody")));
			operation.getValue().path("responses").properties().forEach((response) -> {
				if (response.getKey().startsWith("2")) {
					faults.addAll(faultsOfExamples(contract, operation.getKey() + " answers", response.getValue()));
				}
			});
		});
		assertThat(faults).isEmpty();
	}

	private static List<String> faultsOfExamples(Contract contract, String called, JsonNode body) {
		List<String> faults = new ArrayList<>();
		body.path("content").properties().forEach((content) -> {
			List<JsonNode> examples = new ArrayList<>();
			content.getValue().path("examples").forEach((example) -> examples.add(example.path("value")));
			if (content.getValue().has("example")) {
				examples.add(content.getValue().path("example"));
			}
			JsonNode schema = content.getValue().path("schema");
			String described = called + " " + schema;
			if (examples.size() < Math.max(1, schema.path("oneOf").size())) {
				faults.add(described + " without an example");
			}
			if (content.getKey().equals("application/json")) {
				examples.forEach((example) -> contract.faults(schema, example.toString())
					.forEach((fault) -> faults.add(described + ": the example's " + fault)));
			}
		});
		return faults;
	}

	@Test
	void namesTheProblemsThatAnOperationMayAnswer() throws Exception {
		JsonNode paths = api().path("paths");
		assertThat(problems(paths.at("/~1api~1v1~1trees~1{tree}/get"))).containsExactlyInAnyOrder("invalid-parameter",
				"sign-in-needed", "not-found", "not-acceptable", "too-many-requests", "unexpected", "busy");
		assertThat(problems(paths.at("/~1api~1v1~1condition-reports~1{id}~1decision/post"))).containsExactlyInAnyOrder(
				"unreadable", "invalid-parameter", "sign-in-needed", "not-allowed", "cross-site", "not-found",
				"not-acceptable", "conflict", "in-flight", "stale", "too-large", "unsupported-media-type", "invalid",
				"refused", "key-reused", "precondition-missing", "too-many-requests", "unexpected", "busy");
		assertThat(problems(paths.at("/~1api~1v1~1counties~1{county}~1nominations/post"))).contains("unanswered-checks")
			.doesNotContain("stale");
		assertThat(problems(paths.at("/~1api~1v1~1tokens/post"))).contains("sign-in-failed")
			.doesNotContain("sign-in-needed", "in-flight");
		assertThat(problems(paths.at("/~1api~1v1~1measuring~1girth/post"))).contains("invalid")
			.doesNotContain("conflict", "refused", "not-allowed");
	}

	private Set<String> problems(JsonNode operation) throws Exception {
		JsonNode api = api();
		Set<String> slugs = new HashSet<>();
		operation.path("responses").forEach((response) -> {
			String reference = response.path("$ref").stringValue("");
			if (!reference.isEmpty()) {
				api.at(reference.substring(1))
					.at("/content/application~1problem+json/schema/allOf/1/properties/type/enum")
					.forEach((type) -> slugs.add(type.stringValue("").replace("/problems/", "")));
			}
		});
		return slugs;
	}

	@Test
	void saysWhichFieldsAreAlwaysThereAndWhichMayBeNull() throws Exception {
		JsonNode tree = api().at("/components/schemas/TreeJson");
		assertThat(tree.path("required").toString()).contains("\"tag\"", "\"condition\"").doesNotContain("\"title\"");
		assertThat(tree.at("/properties/title/type").toString()).isEqualTo("[\"string\",\"null\"]");
		assertThat(tree.at("/properties/score/oneOf/0/$ref").stringValue(""))
			.isEqualTo("#/components/schemas/TreeStandingJson");
	}

	@Test
	void everyReferenceLeadsSomewhere() throws Exception {
		JsonNode api = api();
		List<JsonNode> references = api.findValues("$ref");
		assertThat(references).isNotEmpty()
			.allSatisfy((reference) -> assertThat(api.at(reference.stringValue("").substring(1)).isMissingNode())
				.as(reference.stringValue(""))
				.isFalse());
	}

	@Test
	void asksForPasswordOnlyWhereTokensAreMade() throws Exception {
		JsonNode paths = api().path("paths");
		assertThat(paths.at("/~1api~1v1~1tokens/post/security").toString()).isEqualTo("[{\"password\":[]}]");
		assertThat(paths.at("/~1api~1v1~1tokens/get/security").toString())
			.isEqualTo("[{\"token\":[]},{\"session\":[]}]");
		assertThat(paths.at("/~1healthz/get/security").toString()).isEqualTo("[]");
	}

	@Test
	void describesPagingByItsTwoParameters() throws Exception {
		JsonNode parameters = api().at("/paths/~1api~1v1~1people/get/parameters");
		List<String> names = new ArrayList<>();
		parameters.forEach((parameter) -> names.add(parameter.path("name").stringValue("")));
		assertThat(names).containsExactlyInAnyOrder("county", "on", "limit", "cursor", "If-None-Match");
		assertThat(parameters).allSatisfy((parameter) -> assertThat(parameter.path("required").asBoolean()).isFalse());
	}

	@Test
	void writesConstantsAsTheyAreSent() throws Exception {
		assertThat(api().at("/components/schemas/RoleJson/properties/role/enum").toString())
			.isEqualTo("[\"volunteer\",\"verifier\",\"coordinator\",\"administrator\"]");
	}

	@Test
	void canBeBrowsedWithoutAnotherHost() throws Exception {
		this.mvc.perform(get("/docs")).andExpect(status().isFound()).andExpect(header().exists("Location"));
		this.mvc.perform(get("/swagger-ui/index.html"))
			.andExpect(status().isOk())
			.andExpect(content().string(org.hamcrest.Matchers.not(containsString("https://"))));
	}

	private List<Map.Entry<String, JsonNode>> operations() throws Exception {
		List<Map.Entry<String, JsonNode>> operations = new ArrayList<>();
		api().path("paths")
			.properties()
			.forEach((path) -> path.getValue()
				.properties()
				.forEach((operation) -> operations
					.add(Map.entry(operation.getKey() + " " + path.getKey(), operation.getValue()))));
		return operations;
	}

	private JsonNode api() throws Exception {
		return this.json.readTree(this.mvc.perform(get("/openapi.json"))
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsString());
	}

}

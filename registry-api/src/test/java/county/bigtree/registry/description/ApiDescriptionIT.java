package county.bigtree.registry.description;

import java.util.ArrayList;
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
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.forwardedUrl;
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
		assertThat(api.at("/components/securitySchemes").propertyNames()).containsExactlyInAnyOrder("token",
				"password");
	}

	@Test
	void saysTheSameInYaml() throws Exception {
		this.mvc.perform(get("/openapi.yaml")).andExpect(status().isOk()).andExpect(forwardedUrl("/openapi.json.yaml"));
		this.mvc.perform(get("/openapi.json.yaml"))
			.andExpect(status().isOk())
			.andExpect(content().string(containsString("openapi: 3.1.")))
			.andExpect(content().string(containsString("County big-tree registry")));
	}

	@Test
	void everyOperationSaysWhoMayAndWhatAProblemLooksLike() throws Exception {
		List<Map.Entry<String, JsonNode>> operations = operations();
		Set<String> ids = new HashSet<>();
		assertThat(operations).isNotEmpty().allSatisfy((operation) -> {
			JsonNode described = operation.getValue();
			assertThat(described.at("/responses/default/content/application~1problem+json/schema/$ref").stringValue(""))
				.isEqualTo("#/components/schemas/Problem");
			assertThat(described.path("x-who-may").isString()).isTrue();
			assertThat(described.path("summary").isString()).isTrue();
			assertThat(ids.add(described.path("operationId").stringValue(""))).isTrue();
			assertThat(described.path("operationId").stringValue("")).matches("[a-z][A-Za-z]+");
		});
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
		assertThat(paths.at("/~1api~1v1~1tokens/get/security").toString()).isEqualTo("[{\"token\":[]}]");
		assertThat(paths.at("/~1healthz/get/security").toString()).isEqualTo("[]");
	}

	@Test
	void describesPagingByItsTwoParameters() throws Exception {
		JsonNode parameters = api().at("/paths/~1api~1v1~1people/get/parameters");
		List<String> names = new ArrayList<>();
		parameters.forEach((parameter) -> names.add(parameter.path("name").stringValue("")));
		assertThat(names).containsExactlyInAnyOrder("county", "limit", "cursor");
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

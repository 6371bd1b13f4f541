package county.bigtree.registry.description;

import java.io.UnsupportedEncodingException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.boot.webmvc.test.autoconfigure.MockMvcBuilderCustomizer;
import org.springframework.http.MediaType;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.stereotype.Component;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.MvcResult;
import org.springframework.test.web.servlet.setup.ConfigurableMockMvcBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

/**
 * Holds every answer that a test gets against the description of the API: status, headers
 * and content type must be described and the body be as described. So must the body of a
 * request that was taken.
 */
@Component
class ContractCheck implements MockMvcBuilderCustomizer {

	private static final Pattern DESCRIBED = Pattern.compile("/api/(?!v1/convention-tests).*|/healthz|/readyz");

	private final ObjectProvider<MockMvc> mvc;

	private final JsonMapper json;

	private @Nullable Contract contract;

	ContractCheck(ObjectProvider<MockMvc> mvc, JsonMapper json) {
		this.mvc = mvc;
		this.json = json;
	}

	@Override
	public void customize(ConfigurableMockMvcBuilder<?> builder) {
		builder.alwaysDo(this::check);
	}

	private void check(MvcResult result) throws Exception {
		if (DESCRIBED.matcher(path(result.getRequest())).matches()) {
			check(contract(), result.getRequest(), result.getResponse());
		}
	}

	private synchronized Contract contract() throws Exception {
		if (this.contract == null) {
			this.contract = new Contract(this.json,
					this.mvc.getObject().perform(get("/openapi.json")).andReturn().getResponse().getContentAsString());
		}
		return this.contract;
	}

	static void check(Contract contract, MockHttpServletRequest request, MockHttpServletResponse response)
			throws UnsupportedEncodingException {
		String method = String.valueOf(request.getMethod()).toLowerCase(Locale.ROOT);
		String called = method + " " + path(request);
		Optional<JsonNode> operation = contract.operation(method.equals("head") ? "get" : method, path(request))
			.filter(JsonNode::isObject);
		int status = response.getStatus();
		if (operation.isEmpty()) {
			assertThat(status).as(called + " is not described").isBetween(400, 499);
			return;
		}
		Optional<JsonNode> described = contract.response(operation.get(), status);
		assertThat(described)
			.as("%s answers %s, which is not described: %s", called, status, response.getContentAsString())
			.isPresent();
		checkHeaders(described.get(), response, called + " " + status);
		if (!method.equals("head")) {
			checkAnswer(contract, described.get(), response, called + " " + status);
		}
		if (status / 100 == 2) {
			checkRequest(contract, operation.get().path("requestBody"), request, called);
		}
	}

	private static String path(MockHttpServletRequest request) {
		return String.valueOf(request.getRequestURI());
	}

	private static void checkHeaders(JsonNode described, MockHttpServletResponse response, String called) {
		described.path("headers").properties().forEach((header) -> {
			if (header.getValue().path("required").asBoolean()) {
				assertThat(response.getHeader(header.getKey())).as(called + " " + header.getKey()).isNotNull();
			}
		});
	}

	private static void checkAnswer(Contract contract, JsonNode described, MockHttpServletResponse response,
			String called) throws UnsupportedEncodingException {
		String body = response.getContentAsString();
		if (!described.has("content")) {
			assertThat(body).as(called).isEmpty();
			return;
		}
		MediaType type = MediaType.parseMediaType(String.valueOf(response.getContentType()));
		String content = type.getType() + "/" + type.getSubtype();
		JsonNode form = described.path("content").path(content);
		assertThat(form.isObject()).as("%s answers %s, which is not described", called, content).isTrue();
		if (content.endsWith("json")) {
			assertThat(contract.faults(form.path("schema"), body)).as(called + " answers " + body).isEmpty();
		}
	}

	private static void checkRequest(Contract contract, JsonNode described, MockHttpServletRequest request,
			String called) throws UnsupportedEncodingException {
		JsonNode form = described.path("content").path(MediaType.APPLICATION_JSON_VALUE);
		if (form.isObject()) {
			String body = request.getContentAsString();
			assertThat(body).as(called).isNotEmpty();
			List<String> faults = contract.faults(form.path("schema"), String.valueOf(body));
			assertThat(faults).as(called + " took " + body).isEmpty();
		}
	}

}

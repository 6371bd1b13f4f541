package county.bigtree.registry.security;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.http.MediaType;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockPart;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.AbstractMockHttpServletRequestBuilder;
import org.springframework.test.web.servlet.request.MockMultipartHttpServletRequestBuilder;

import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.request;

/**
 * Asks as a row of the table says: the address leads to what is planted, the body is the
 * example of the description, fitted to it, and If-Match names the present state as far
 * as the asker sees it.
 */
final class TableRequests {

	private static final Pattern VARIABLE = Pattern.compile("\\{(\\w+)}");

	private static final Pattern DECIDES = Pattern.compile("(/api/v1/[a-z-]+/[^/]+)(/.*)?");

	private final JsonMapper json;

	private final JsonNode description;

	private final TestPeople people;

	private final String here;

	private final String elsewhere;

	private final String practice;

	TableRequests(JsonMapper json, JsonNode description, TestPeople people, String here, String elsewhere,
			String practice) {
		this.json = json;
		this.description = description;
		this.people = people;
		this.here = here;
		this.elsewhere = elsewhere;
		this.practice = practice;
	}

	MockHttpServletResponse ask(MockMvc mvc, WhoMay row, PlantedThings things, @Nullable TestPerson asker)
			throws Exception {
		String path = address(row, things);
		AbstractMockHttpServletRequestBuilder<?> asking = body(row, path, things);
		credentials(row, asking, asker);
		asking.header("Idempotency-Key", UUID.randomUUID().toString());
		if (!row.method().equals("GET")) {
			asking.header(HttpHeaders.IF_MATCH, presentState(mvc, path, asker));
		}
		return mvc.perform(asking).andReturn().getResponse();
	}

	String address(WhoMay row, PlantedThings things) {
		Matcher variables = VARIABLE.matcher(row.path());
		String path = variables.replaceAll((variable) -> value(row, variable.group(1), things));
		return row.of().startsWith("?")
				? path + VARIABLE.matcher(row.of()).replaceAll((variable) -> value(row, variable.group(1), things))
				: path;
	}

	private String value(WhoMay row, String variable, PlantedThings things) {
		return switch (variable) {
			case "county" -> row.of().equals("practice") ? this.practice : this.here;
			case "species" -> "quercus-alba";
			case "slug" -> "not-found";
			case "number" -> "1";
			case "method" -> "tape";
			case "collection" -> "trees";
			case "decision" -> "eligibility";
			case "tag", "standing" -> things.id("standing");
			case "tree" ->
				things.id(row.path().endsWith("/letter.pdf") ? "owned" : things.has(row.of()) ? row.of() : "standing");
			case "edition" -> things.id(row.path().endsWith("/publication") ? "waiting edition" : "edition");
			case "id" -> id(row, things);
			default -> things.id(variable);
		};
	}

	/** Of what the folder above the variable holds. */
	private static String id(WhoMay row, PlantedThings things) {
		String folder = row.path().replaceFirst("/\\{id}.*", "").replaceFirst(".*/", "");
		String one = folder.replaceFirst("s$", "");
		String special = (row.of() + " " + one).toLowerCase(Locale.ROOT);
		if (things.has(special)) {
			return things.id(special);
		}
		if (row.path().endsWith("/moves")) {
			return things.id(one.equals("measurement") ? "remeasurement" : "waiting " + one);
		}
		return things.id(one);
	}

	private AbstractMockHttpServletRequestBuilder<?> body(WhoMay row, String path, PlantedThings things) {
		JsonNode parts = parts(row);
		if (parts.isObject()) {
			return inParts(path, parts);
		}
		AbstractMockHttpServletRequestBuilder<?> asking = request(HttpMethod.valueOf(row.method()), path);
		example(row, things)
			.ifPresent((example) -> asking.contentType(MediaType.APPLICATION_JSON).content(example.toString()));
		return asking;
	}

	/** The parts of a form with files; missing where it takes none. */
	JsonNode parts(WhoMay row) {
		return content(row).path(MediaType.MULTIPART_FORM_DATA_VALUE).path("example");
	}

	/** A body that would do; empty where none is taken. */
	Optional<ObjectNode> example(WhoMay row, PlantedThings things) {
		JsonNode body = content(row).path(MediaType.APPLICATION_JSON_VALUE);
		JsonNode example = body.has("example") ? body.path("example")
				: body.path("examples").isEmpty() ? body : body.path("examples").iterator().next().path("value");
		return example.isObject() ? Optional.of(fitted(row, (ObjectNode) example.deepCopy(), things))
				: Optional.empty();
	}

	private JsonNode content(WhoMay row) {
		return operation(row).path("requestBody").path("content");
	}

	/** What the description says of the row's endpoint; missing for pages. */
	JsonNode operation(WhoMay row) {
		return this.description.path("paths").path(row.path()).path(row.method().toLowerCase(Locale.ROOT));
	}

	static AbstractMockHttpServletRequestBuilder<?> inParts(String path, JsonNode parts) {
		MockMultipartHttpServletRequestBuilder asking = multipart(path);
		parts.properties().forEach((part) -> {
			JsonNode value = part.getValue();
			String text = value.isString() ? value.stringValue("") : value.toString();
			asking.part(new MockPart(part.getKey(), part.getKey().equals("file") ? "a.csv" : null, content(text)));
		});
		return asking;
	}

	/** Pictures stand in the examples in Base64. */
	static byte[] content(String example) {
		return example.startsWith("/9j/") ? Base64.getDecoder().decode(example)
				: example.getBytes(StandardCharsets.UTF_8);
	}

	/** The example tells of the demo: what it names is replaced by what is planted. */
	private ObjectNode fitted(WhoMay row, ObjectNode body, PlantedThings things) {
		Map<String, String> fitting = Map.of("tree", things.id("standing"), "county", this.here, "key", "whomaynew",
				"tagPrefix", "WMN", "email", UUID.randomUUID() + "@example.org", "began", "2025-05-28", "visitedOn",
				"2025-06-10");
		fitting.forEach((field, value) -> {
			if (body.has(field)) {
				body.put(field, value);
			}
		});
		if (body.has("into")) {
			body.put("into", row.path().endsWith("/fold") ? "quercus-rubra" : things.id("kept"));
		}
		if (row.path().endsWith("/distinctions")) {
			body.put("from", things.id("kept"));
		}
		if (body.has("measurements")) {
			body.putArray("measurements").add(things.id("measurement"));
		}
		if (body.has("verdict")) {
			body.remove("measurement");
		}
		if (row.path().startsWith("/api/v1/photos/")) {
			body.put("decision", row.of());
		}
		if (row.path().endsWith("/unknown-names")) {
			body.put("name", "Another oak");
		}
		if (row.path().endsWith("/acceptance")) {
			body.put("token", things.id("invitation"));
		}
		if (body.has("roles")) {
			body.path("roles").forEach((role) -> ((ObjectNode) role).put("county", this.here));
		}
		fitAccount(row, body, things);
		if (body.has("move")) {
			body.put("move", row.of());
			body.put("verifier", this.people.verifier(this.here).id().toString());
		}
		if (body.has("measurement") && body.path("measurement").isObject()) {
			confirm((ObjectNode) body.path("measurement"));
		}
		if (body.has("measuredOn")) {
			confirm(body);
		}
		if (row.path().endsWith("/location")) {
			body.put("county", row.of().equals("beyond") ? this.elsewhere : this.here);
		}
		return body;
	}

	private static void fitAccount(WhoMay row, ObjectNode body, PlantedThings things) {
		if (row.path().endsWith("/session")) {
			body.put("email", things.id("email")).put("password", TestPeople.PASSWORD);
		}
		if (row.path().endsWith("/people/password-reset")) {
			body.put("token", things.id("reset"));
		}
		if (row.path().endsWith("/people/{person}/roles")) {
			body.remove(List.of("from", "until"));
		}
		if (body.has("presentPassword")) {
			body.put("presentPassword", TestPeople.PASSWORD);
		}
	}

	private void confirm(ObjectNode measurement) {
		measurement.set("confirmedChecks", this.json.readTree("{" + TestTrees.CONFIRMED + "}").path("confirmedChecks"));
	}

	/** Tokens are made for the password, everything else is done with a token. */
	static void credentials(WhoMay row, AbstractMockHttpServletRequestBuilder<?> asking, @Nullable TestPerson asker) {
		if (asker == null) {
			return;
		}
		boolean password = row.endpoint().equals("POST /api/v1/tokens");
		String pair = asker.email() + ":" + TestPeople.PASSWORD;
		asking.header(HttpHeaders.AUTHORIZATION,
				password ? "Basic " + Base64.getEncoder().encodeToString(pair.getBytes(StandardCharsets.UTF_8))
						: asker.bearer());
	}

	static String presentState(MockMvc mvc, String path, @Nullable TestPerson asker) throws Exception {
		Matcher decides = DECIDES.matcher(path);
		if (!decides.matches() || asker == null) {
			return "\"1-x\"";
		}
		String tag = mvc.perform(get(decides.group(1)).header(HttpHeaders.AUTHORIZATION, asker.bearer()))
			.andReturn()
			.getResponse()
			.getHeader(HttpHeaders.ETAG);
		return Objects.requireNonNullElse(tag, "\"1-x\"");
	}

}

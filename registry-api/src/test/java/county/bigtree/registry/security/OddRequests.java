package county.bigtree.registry.security;

import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.StringJoiner;
import java.util.TreeMap;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import county.bigtree.registry.people.TestPerson;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.http.MediaType;
import org.springframework.mock.web.MockPart;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.AbstractMockHttpServletRequestBuilder;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.test.web.servlet.request.MockMultipartHttpServletRequestBuilder;
import org.springframework.test.web.servlet.request.MockMvcRequestBuilders;

/**
 * Makes requests to an endpoint from what the description says of it: mostly right, with
 * some of the address, the parameters, the headers and the body gone wrong. The same seed
 * makes the same request.
 */
final class OddRequests {

	private static final List<String> MEDIA_TYPES = List.of("", "application/json;charset=utf-16", "text/plain",
			"application/xml", "application/x-www-form-urlencoded", "multipart/form-data", "*/*", "json", "a/b/c;;",
			"application/json; q=\"", "application/problem+json", "application/cbor", "text/html");

	private static final Pattern FIELD = Pattern
		.compile("<(?:input|select|textarea|button)[^>]*\\bname=\"([^\"]+)\"[^>]*>");

	private static final Pattern VALUE = Pattern.compile("\\bvalue=\"([^\"]*)\"");

	private final JsonMapper json;

	private final TableRequests good;

	OddRequests(JsonMapper json, TableRequests good) {
		this.json = json;
		this.good = good;
	}

	AbstractMockHttpServletRequestBuilder<?> make(MockMvc mvc, WhoMay row, PlantedThings things,
			@Nullable TestPerson asker, Random random) throws Exception {
		JsonNode operation = this.good.operation(row);
		String path = (random.nextInt(5) == 0) ? oddAddress(row, things, random) : this.good.address(row, things);
		String query = query(operation, row, things, random);
		URI address = URI.create(path.replaceFirst("\\?.*", "") + (query.isEmpty() ? "" : "?" + query));
		AbstractMockHttpServletRequestBuilder<?> asking = row.isForm() ? pageForm(mvc, address, asker, random)
				: body(row, address, things, random);
		headers(asking, mvc, row, path, asker, random);
		return asking;
	}

	/** With one of its variables gone wrong; itself where it has none. */
	private String oddAddress(WhoMay row, PlantedThings things, Random random) {
		List<String> parts = new ArrayList<>(List.of(row.path().split("/")));
		List<Integer> variables = new ArrayList<>();
		for (int index = 0; index < parts.size(); index++) {
			if (parts.get(index).startsWith("{")) {
				variables.add(index);
			}
		}
		if (variables.isEmpty()) {
			return this.good.address(row, things);
		}
		String[] kept = this.good.address(row, things).replaceFirst("\\?.*", "").split("/");
		int odd = variables.get(random.nextInt(variables.size()));
		String text = OddText.shortText(random);
		kept[odd] = (random.nextInt(4) == 0) ? UUID.randomUUID().toString() : encoded(text.isEmpty() ? " " : text);
		return String.join("/", kept);
	}

	private static String encoded(String text) {
		return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
	}

	private String query(JsonNode operation, WhoMay row, PlantedThings things, Random random) {
		StringJoiner query = new StringJoiner("&");
		operation.path("parameters").forEach((parameter) -> {
			if (parameter.path("in").stringValue("").equals("query") && random.nextInt(2) == 0) {
				String name = parameter.path("name").stringValue("");
				for (int times = (random.nextInt(15) == 0) ? 2 : 1; times > 0; times--) {
					query.add(name + "=" + encoded(value(parameter, random)));
				}
			}
		});
		if (random.nextInt(12) == 0) {
			query.add(encoded(OddText.shortText(random)) + "=" + encoded(OddText.shortText(random)));
		}
		if (row.of().startsWith("?") && random.nextBoolean()) {
			query.add(this.good.address(row, things).replaceFirst(".*\\?", ""));
		}
		return query.toString();
	}

	private static String value(JsonNode parameter, Random random) {
		if (random.nextInt(3) == 0) {
			return OddText.shortText(random);
		}
		JsonNode schema = parameter.path("schema");
		if (parameter.has("example")) {
			return parameter.path("example").asString("");
		}
		return switch (schema.path("type").stringValue("") + " " + schema.path("format").stringValue("")) {
			case "boolean " -> random.nextBoolean() ? "true" : "false";
			case "integer ", "integer int32", "integer int64" ->
				random.nextBoolean() ? String.valueOf(random.nextInt(600) - 10) : OddText.number(random);
			case "string date" ->
				"20%02d-%02d-%02d".formatted(random.nextInt(40), 1 + random.nextInt(12), 1 + random.nextInt(31));
			default -> List.of("larkmere", "whomayhere", "quercus-alba", "waiting", "submitted", "2026-11-01",
					"2026-11-20T10:00:00Z", "oak", "WMH-0001")
				.get(random.nextInt(9));
		};
	}

	private AbstractMockHttpServletRequestBuilder<?> body(WhoMay row, URI address, PlantedThings things,
			Random random) {
		JsonNode parts = this.good.parts(row);
		if (parts.isObject()) {
			return form(address, parts, random);
		}
		AbstractMockHttpServletRequestBuilder<?> asking = MockMvcRequestBuilders
			.request(HttpMethod.valueOf(row.method()), address);
		this.good.example(row, things)
			.ifPresent((example) -> asking
				.contentType((random.nextInt(15) == 0) ? mediaType(random) : MediaType.APPLICATION_JSON_VALUE)
				.content(new OddJson(this.json, random).bytes(example)));
		return asking;
	}

	/** The fields of the page's own forms, filled as chance has it. */
	private static AbstractMockHttpServletRequestBuilder<?> pageForm(MockMvc mvc, URI address,
			@Nullable TestPerson asker, Random random) throws Exception {
		MockHttpServletRequestBuilder form = MockMvcRequestBuilders.post(address);
		for (Map.Entry<String, String> field : fields(mvc, address, asker).entrySet()) {
			if (random.nextInt(6) != 0) {
				form.param(field.getKey(), (random.nextInt(3) == 0) ? OddText.text(random) : field.getValue());
			}
		}
		if (random.nextInt(8) == 0) {
			form.param(OddText.shortText(random), OddText.shortText(random));
		}
		return form;
	}

	/** With the value that each has, or a word where it has none. */
	private static Map<String, String> fields(MockMvc mvc, URI address, @Nullable TestPerson asker) throws Exception {
		MockHttpServletRequestBuilder reading = MockMvcRequestBuilders.get(address);
		if (asker != null) {
			reading.header(HttpHeaders.AUTHORIZATION, asker.bearer());
		}
		String page = mvc.perform(reading.header(HttpHeaders.ACCEPT, "text/html"))
			.andReturn()
			.getResponse()
			.getContentAsString();
		Map<String, String> fields = new TreeMap<>(Map.of("key", "k", "reason", "seen", "do", "look"));
		Matcher tags = FIELD.matcher(page);
		while (tags.find()) {
			Matcher value = VALUE.matcher(tags.group());
			fields.put(tags.group(1), (value.find() && !value.group(1).isEmpty()) ? value.group(1) : "12");
		}
		return fields;
	}

	private static String mediaType(Random random) {
		return MEDIA_TYPES.get(random.nextInt(MEDIA_TYPES.size()));
	}

	private AbstractMockHttpServletRequestBuilder<?> form(URI address, JsonNode parts, Random random) {
		MockMultipartHttpServletRequestBuilder asking = MockMvcRequestBuilders.multipart(address);
		parts.properties().forEach((part) -> {
			byte[] bytes = (part.getValue() instanceof ObjectNode object) ? new OddJson(this.json, random).bytes(object)
					: file(part.getValue().stringValue(""), random);
			if (random.nextInt(12) != 0) {
				asking.part(new MockPart(part.getKey(), part.getKey().equals("file") ? "a.csv" : null, bytes));
			}
		});
		return asking;
	}

	private static byte[] file(String text, Random random) {
		byte[] picture = TableRequests.content(text);
		if (text.startsWith("/9j/") && random.nextInt(4) != 0) {
			for (int hits = random.nextInt(4); hits > 0; hits--) {
				picture[random.nextInt(picture.length)] = (byte) random.nextInt();
			}
			return picture;
		}
		return switch (random.nextInt(6)) {
			case 0 -> OddText.text(random).getBytes(StandardCharsets.UTF_8);
			case 1 -> text.replace(",", OddText.shortText(random)).getBytes(StandardCharsets.UTF_8);
			case 2 -> ("PK\u0003\u0004" + text).getBytes(StandardCharsets.ISO_8859_1);
			case 3 -> text.getBytes(StandardCharsets.UTF_16);
			default -> text.getBytes(StandardCharsets.UTF_8);
		};
	}

	private static void headers(AbstractMockHttpServletRequestBuilder<?> asking, MockMvc mvc, WhoMay row, String path,
			@Nullable TestPerson asker, Random random) throws Exception {
		if (random.nextInt(40) == 0) {
			asking.header(HttpHeaders.AUTHORIZATION, header(random));
		}
		else {
			TableRequests.credentials(row, asking, asker);
		}
		if (!row.method().equals("GET") && random.nextInt(8) != 0) {
			asking.header(HttpHeaders.IF_MATCH, (random.nextInt(6) == 0) ? header(random)
					: TableRequests.presentState(mvc, path.contains("%") ? "" : path, asker));
		}
		if (random.nextInt(3) == 0) {
			asking.header("Idempotency-Key", (random.nextInt(3) == 0) ? header(random) : UUID.randomUUID().toString());
		}
		for (String name : List.of(HttpHeaders.IF_NONE_MATCH, HttpHeaders.RANGE, "X-HTTP-Method-Override",
				"X-Forwarded-Host", HttpHeaders.ORIGIN, HttpHeaders.COOKIE)) {
			if (random.nextInt(25) == 0) {
				asking.header(name, header(random));
			}
		}
		if (random.nextInt(15) == 0) {
			asking.header(HttpHeaders.ACCEPT, mediaType(random));
		}
	}

	/** Without what no server lets through in a header. */
	private static String header(Random random) {
		return OddText.shortText(random).replaceAll("[^\\t -~\u00a0-\u00ff]", "?");
	}

}

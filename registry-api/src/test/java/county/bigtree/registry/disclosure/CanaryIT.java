package county.bigtree.registry.disclosure;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.journal.SealJournal;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import county.bigtree.registry.photo.TestPhotos;
import county.bigtree.registry.photo.image.TestPictures;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

/**
 * Plants values that can't come up by chance wherever private things are taken, then asks
 * every endpoint that reads, as nobody and as a volunteer of the county, and looks for
 * them in all that comes out: answers, pages, headers, problems and the log. Endpoints
 * are found in the mapping, so a new one is asked without being named here.
 */
@RegistryTest
@ExtendWith(OutputCaptureExtension.class)
class CanaryIT {

	private static final String COUNTY = "canaryton";

	private static final String OAK = "quercus-alba";

	private static final Pattern VARIABLE = Pattern.compile("\\{(\\w+)[^}]*}");

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	@Qualifier("requestMappingHandlerMapping")
	private RequestMappingHandlerMapping handlers;

	@Autowired
	private SealJournal seals;

	private final Canaries canaries = new Canaries();

	/** Ids and tags that may not come out either, unless the asker named them. */
	private final Set<String> secret = new LinkedHashSet<>();

	private final Set<String> treeNames = new LinkedHashSet<>();

	private final Set<String> ids = new LinkedHashSet<>();

	private String published = "";

	private int asked;

	@Test
	void nothingPrivateComesOut(CapturedOutput log) throws Exception {
		this.seals.seal();
		this.trees.county(COUNTY, "CNY");
		TestPerson coordinator = this.people.coordinator(COUNTY);
		plant(coordinator);
		assertThat(shown(coordinator)).as("what was planted is there to be found").isEmpty();
		List<String> faults = new ArrayList<>();
		List<@Nullable TestPerson> askers = new ArrayList<>();
		askers.add(null);
		askers.add(this.people.volunteer(COUNTY));
		for (@Nullable
		TestPerson asker : askers) {
			for (String path : reading()) {
				askEverything(path, asker, faults);
			}
			provoke(asker, faults);
			assertThat(perform(get("/api/v1/photos/" + this.published + "/image"), asker).getStatus())
				.as("a picture is shown, in which nothing is found")
				.isEqualTo(200);
		}
		assertThat(faults).isEmpty();
		assertThat(this.asked).as("requests made").isGreaterThan(1000);
		assertThat(this.canaries.in(log.getAll())).as("in the log").isEmpty();
	}

	private void plant(TestPerson coordinator) throws Exception {
		TestPerson verifier = this.people.verifier(COUNTY);
		String listed = accepted(nominate("listed"), verifier);
		String hidden = accepted(nominate("hidden"), verifier);
		String waiting = nominate("waiting");
		for (String nomination : List.of(listed, hidden, waiting)) {
			String tree = JsonPath.read(nomination, "$.tree");
			String tag = JsonPath.read(nomination, "$.tag");
			this.treeNames.addAll(List.of(tree, tag));
			List<String> own = List.of(JsonPath.read(nomination, "$.id"),
					JsonPath.read(nomination, "$.measurement.id"));
			this.ids.addAll(own);
			if (!nomination.equals(listed)) {
				this.secret.addAll(own);
				this.secret.addAll(List.of(tree, tag));
			}
			String owner = JsonPath.read(made("/api/v1/trees/" + tree + "/owners",
					"{\"name\": \"%s\", \"contact\": \"%s\"}".formatted(word("owner"), word("contact@example.org")),
					coordinator), "$.id");
			this.ids.add(owner);
			this.secret.add(owner);
			if (nomination.equals(listed)) {
				made("/api/v1/owners/" + owner + "/consents", """
						{"purposes": ["listing", "visit"], "given": true, "how": "letter", "remarks": "%s"}"""
					.formatted(word("consent")), coordinator);
				made("/api/v1/owners/" + firstOwner(tree, coordinator) + "/consents", """
						{"purposes": ["listing"], "given": true, "how": "letter"}""", coordinator);
			}
			letters(tree);
			work(tree, verifier, coordinator);
			photos(tree, nomination.equals(listed), verifier, coordinator);
		}
	}

	/** The owner that the nomination brought. */
	private String firstOwner(String tree, TestPerson coordinator) throws Exception {
		return JsonPath.read(answer(this.trees.ask(get("/api/v1/trees/" + tree + "/owners"), coordinator)),
				"$.items[0].id");
	}

	private String nominate(String what) throws Exception {
		return made("/api/v1/counties/" + COUNTY + "/nominations",
				"""
						{"species": "%s", "location": {"latitude": %s, "longitude": %s, "accuracyMetres": 8},
						 "locality": "%s", "visibility": "nearby",
						 "owner": {"name": "%s", "contact": "%s", "consentToVisit": true},
						 "filedFor": {"name": "%s", "contact": "%s", "credit": "%s"},
						 "measurement": {"measuredOn": "2024-05-02", "measuredBy": ["%s"], "remarks": "%s", %s, %s}}"""
					.formatted(OAK, Canaries.LATITUDE, Canaries.LONGITUDE, word("locality"), word("owner-" + what),
							word("mill-lane@example.org"), word("finder"), word("finders-contact"), word("credit"),
							word("measurer"), word("remarks"), TestTrees.readings(what.equals("hidden") ? 120 : 100),
							TestTrees.CONFIRMED),
				this.people.volunteer(COUNTY));
	}

	private String accepted(String nomination, TestPerson verifier) throws Exception {
		String signOff = answer(this.trees.signOff(JsonPath.read(nomination, "$.measurement.id"), verifier,
				"{\"verdict\": \"confirmed\", \"remarks\": \"%s\"}".formatted(word("sign-off"))));
		this.ids.add(JsonPath.read(signOff, "$.id"));
		return nomination;
	}

	private void letters(String tree) throws Exception {
		String body = "{\"about\": \"privacy\", \"tree\": \"%s\", \"text\": \"%s\", \"contact\": \"%s\"}"
			.formatted(tree, word("letter"), word("letter@example.org"));
		MockHttpServletRequestBuilder sent = post("/api/v1/counties/" + COUNTY + "/letters").content(body)
			.contentType(MediaType.APPLICATION_JSON);
		String letter = JsonPath.read(answer(this.mvc.perform(sent)), "$.id");
		this.ids.add(letter);
		this.secret.add(letter);
	}

	/** A visit to be made, and a report that waits. */
	private void work(String tree, TestPerson verifier, TestPerson coordinator) throws Exception {
		String visit = """
				{"tree": "%s", "purpose": "condition", "verifier": "%s", "companion": "%s", "notes": "%s"}"""
			.formatted(tree, verifier.id(), word("companion"), word("visit"));
		this.ids.add(JsonPath.read(made("/api/v1/visits", visit, coordinator), "$.id"));
		String report = "{\"condition\": \"declining\", \"observedOn\": \"2025-05-02\", \"remarks\": \"%s\"}"
			.formatted(word("report"));
		this.ids.add(JsonPath.read(made("/api/v1/trees/" + tree + "/condition-reports", report, verifier), "$.id"));
	}

	/**
	 * One that waits, one of a sheet of paper, and one that was passed: where the tree is
	 * listed its owners then let photos be published, but what the camera noted is not.
	 */
	private void photos(String tree, boolean listed, TestPerson verifier, TestPerson coordinator) throws Exception {
		String address = "/api/v1/trees/" + tree + "/photos";
		byte[] file = TestPictures.withExif(TestPictures.jpeg(400, 300), 1, word("camera"));
		for (String shows : List.of("bark", "sheet")) {
			String waiting = TestPhotos.id(TestPhotos.send(this.trees, address, file, verifier, "shows", shows, "text",
					word("phototext"), "credit", word("photocredit")));
			this.ids.add(waiting);
			this.secret.add(waiting);
		}
		String text = listed ? "an oak" : word("passedtext");
		String passed = TestPhotos.id(TestPhotos.send(this.trees, address, file, verifier, "text", text));
		answer(this.trees.decide("/api/v1/photos/" + passed, "/decisions", "{\"decision\": \"pass\"}", coordinator));
		this.ids.add(passed);
		if (!listed) {
			this.secret.add(passed);
			return;
		}
		for (Object owner : JsonPath.<List<Object>>read(
				answer(this.trees.ask(get("/api/v1/trees/" + tree + "/owners"), coordinator)), "$.items[*].id")) {
			made("/api/v1/owners/" + owner + "/consents", """
					{"purposes": ["photos"], "given": true, "how": "letter"}""", coordinator);
		}
		this.published = passed;
	}

	/** What a coordinator should have found and did not: the test would prove nothing. */
	private List<String> shown(TestPerson coordinator) throws Exception {
		StringBuilder all = new StringBuilder();
		for (String name : this.treeNames) {
			for (String what : List.of("/owners", "/place", "/photos")) {
				all.append(answer(this.trees.ask(get("/api/v1/trees/" + name + what), coordinator)));
			}
		}
		all.append(answer(this.trees.ask(get("/api/v1/counties/" + COUNTY + "/letters"), coordinator)));
		for (String id : this.ids) {
			for (String what : List.of("/api/v1/letters/%s", "/api/v1/visits/%s", "/api/v1/nominations/%s/filed-for",
					"/api/v1/sign-offs/%s", "/api/v1/condition-reports/%s")) {
				all.append(this.trees.ask(get(what.formatted(id)), coordinator)
					.andReturn()
					.getResponse()
					.getContentAsString());
			}
		}
		List<String> missing = new ArrayList<>();
		for (String word : List.of("owner", "contact@", "mill-lane@", "locality", "consent", "finder",
				"finders-contact", "credit", "letter", "letter@", "companion", "visit", "phototext", "photocredit",
				"passedtext")) {
			if (!all.toString().contains(word(word))) {
				missing.add(word);
			}
		}
		if (!all.toString().contains(String.valueOf(Canaries.LATITUDE))) {
			missing.add("the latitude");
		}
		return missing;
	}

	private Set<String> reading() {
		Set<String> paths = new TreeSet<>();
		this.handlers.getHandlerMethods().keySet().forEach((mapping) -> {
			Set<RequestMethod> methods = mapping.getMethodsCondition().getMethods();
			if (methods.isEmpty() || methods.contains(RequestMethod.GET)) {
				paths.addAll(mapping.getPatternValues());
			}
		});
		return paths;
	}

	private void askEverything(String path, @Nullable TestPerson asker, List<String> faults) throws Exception {
		List<String> queries = List.of("", "?asOf=2025-01-01", "?knownAt=" + Instant.now(), "?county=" + COUNTY,
				"?counties=" + COUNTY, "?query=" + word("owner"), "?limit=1");
		for (String address : addresses(path)) {
			for (String query : queries) {
				ask(get(address + query).accept(MediaType.APPLICATION_JSON), address + query, asker, faults);
			}
			for (MediaType wanted : List.of(MediaType.TEXT_HTML, MediaType.IMAGE_JPEG)) {
				ask(get(address).accept(wanted), address, asker, faults);
			}
			for (String query : inOtherForms(path)) {
				ask(get(address + query), address + query, asker, faults);
			}
		}
	}

	/** Of files, feeds and features, which are none of those forms. */
	private static List<String> inOtherForms(String path) {
		if (path.startsWith("/ogc/collections/")) {
			return List.of("?bbox=-180,-90,180,90&limit=1000", "?datetime=2000-01-01/..&limit=1000",
					"?limit=1000&county=" + COUNTY);
		}
		return (path.startsWith("/exports/") || path.endsWith(".atom")) ? List.of("", "?asOf=2025-01-01") : List.of();
	}

	/** The path with every variable filled by all that it may stand for. */
	private List<String> addresses(String path) {
		List<String> addresses = List.of(path);
		Matcher variables = VARIABLE.matcher(path);
		while (variables.find()) {
			String variable = variables.group();
			addresses = addresses.stream()
				.flatMap((address) -> values(variables.group(1)).stream()
					.map((value) -> address.replace(variable, value)))
				.toList();
		}
		return addresses;
	}

	private Set<String> values(String variable) {
		return switch (variable) {
			case "county" -> Set.of(COUNTY);
			case "collection" -> Set.of("trees", "titles");
			case "species" -> Set.of(OAK);
			case "tree", "tag" -> this.treeNames;
			default -> {
				Set<String> all = new LinkedHashSet<>(this.ids);
				all.add(this.treeNames.iterator().next());
				yield all;
			}
		};
	}

	/** Requests that fail, and repeat what they were sent at most to who sent it. */
	private void provoke(@Nullable TestPerson asker, List<String> faults) throws Exception {
		Map<String, String> bodies = new LinkedHashMap<>();
		for (String tree : this.treeNames) {
			bodies.put("/api/v1/trees/" + tree + "/measurements", TestTrees.measurement(101, "2025-05-02"));
			bodies.put("/api/v1/trees/" + tree + "/condition-reports",
					"{\"condition\": \"fallen\", \"observedOn\": \"2999-01-01\"}");
			bodies.put("/api/v1/trees/" + tree + "/owners", "{\"name\": \"somebody\"}");
			bodies.put("/api/v1/trees/" + tree + "/visibility", "{\"visibility\": \"exact\", \"reason\": \"none\"}");
		}
		for (String id : this.ids) {
			bodies.put("/api/v1/owners/" + id + "/consents", "{\"purposes\": [], \"given\": true, \"how\": \"form\"}");
			bodies.put("/api/v1/letters/" + id + "/outcome", "{\"became\": \"nothing\"}");
			bodies.put("/api/v1/nominations/" + id + "/moves", "{\"move\": \"withdraw\", \"reason\": \"none\"}");
		}
		bodies.put("/api/v1/counties/" + COUNTY + "/nominations", """
				{"species": "%s", "location": {"latitude": %s, "longitude": -86.98, "accuracyMetres": 8},
				 "measurement": {"measuredOn": "2024-05-02", "measuredBy": [], %s}}""".formatted(OAK, 40.12,
				TestTrees.readings(100)));
		for (Map.Entry<String, String> body : bodies.entrySet()) {
			ask(post(body.getKey()).contentType(MediaType.APPLICATION_JSON)
				.header(HttpHeaders.IF_MATCH, "\"1-x\"")
				.content(body.getValue()), body.getKey(), asker, faults);
		}
		for (String broken : List.of("{\"about\": \"tip\", \"text\": \"%s\", \"contact\": ", "{\"text\": \"%s\"}",
				"%s")) {
			perform(post("/api/v1/counties/" + COUNTY + "/letters").contentType(MediaType.APPLICATION_JSON)
				.content(broken.formatted(word("broken"))), asker);
		}
	}

	private void ask(MockHttpServletRequestBuilder request, String address, @Nullable TestPerson asker,
			List<String> faults) throws Exception {
		this.asked++;
		MockHttpServletResponse answer = perform(request, asker);
		StringBuilder out = new StringBuilder(content(answer));
		answer.getHeaderNames().forEach((name) -> out.append('\n').append(answer.getHeaders(name)));
		// What the asker named is no news to them.
		String news = out.toString();
		for (String named : address.split("[/?=&]")) {
			news = (named.length() > 3) ? news.replace(named, "") : news;
		}
		List<String> found = new ArrayList<>(this.canaries.in(news));
		this.secret.stream().filter(news::contains).forEach(found::add);
		if (!found.isEmpty()) {
			faults.add("%s as %s answers %d with %s".formatted(address, (asker != null) ? "a volunteer" : "nobody",
					answer.getStatus(), found));
		}
		if (answer.getStatus() >= 500) {
			faults.add("%s answers %d".formatted(address, answer.getStatus()));
		}
	}

	/** What was answered; of an archive, what is packed in it. */
	private static String content(MockHttpServletResponse answer) throws Exception {
		if (!"application/zip".equals(answer.getContentType())) {
			return answer.getContentAsString();
		}
		StringBuilder content = new StringBuilder();
		try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(answer.getContentAsByteArray()))) {
			for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
				content.append(entry.getName()).append(new String(zip.readAllBytes(), StandardCharsets.UTF_8));
			}
		}
		return content.toString();
	}

	private MockHttpServletResponse perform(MockHttpServletRequestBuilder request, @Nullable TestPerson asker)
			throws Exception {
		if (asker != null) {
			request.header(HttpHeaders.AUTHORIZATION, asker.bearer());
		}
		return this.mvc.perform(request).andReturn().getResponse();
	}

	private String made(String address, String body, TestPerson person) throws Exception {
		return answer(this.trees.ask(post(address).content(body), person));
	}

	private static String answer(ResultActions asked) throws Exception {
		String body = asked.andReturn().getResponse().getContentAsString();
		assertThat(asked.andReturn().getResponse().getStatus()).as(body).isBetween(200, 299);
		return body;
	}

	private static String word(String what) {
		return Canaries.word(what);
	}

}

package county.bigtree.registry.security;

import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.CountyRole;
import county.bigtree.registry.people.Role;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import county.bigtree.registry.photo.TestPhotos;

import org.springframework.mock.web.MockPart;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockMultipartHttpServletRequestBuilder;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

/**
 * What one person filed, signed, reported, planned, proposed and imported in a county
 * while they held the roles for it. Each thing goes by a name: that of the table's
 * column, or of a variable in an address.
 */
final class PlantedThings {

	/** Fits the mapping of the description's example. */
	private static final String FILE = "No,Name,Seen,Girth in,Height ft,Spread ft,Girth 2015,Height 2015,Spread 2015,Lat,Long,State,Known as,Found by\n"
			+ "74,white oak,June 1998,172,92,88,181,93,90,40.1,-86.2,good,The Long Oak,A. Finder\n";

	private static final Duration PATIENCE = Duration.ofSeconds(60);

	private static final String MAPPING = """
			{"basis": "An invented list", "measuredOn": "2010-06-01", "locationAccuracyMetres": 5000, "columns": {
			 "species": "name", "latitude": "lat", "longitude": "long",
			 "girth": {"column": "girth", "method": "tape", "unit": "in"},
			 "height": {"column": "height", "unit": "ft"}, "crown": {"column": "spread", "unit": "ft"}}}""";

	/** Each file brings a tree of another one, by which it is found. */
	private static final List<String> SPECIES = List.of("Quercus rubra", "Acer rubrum", "Acer saccharum",
			"Fraxinus americana", "Fagus grandifolia", "Juglans nigra", "Ulmus americana", "Tilia americana");

	private static final AtomicInteger imports = new AtomicInteger();

	private final Map<String, String> ids = new HashMap<>();

	private final String county;

	private final TestTrees trees;

	private final TestPeople people;

	private PlantedThings(String county, TestTrees trees, TestPeople people) {
		this.county = county;
		this.trees = trees;
		this.people = people;
	}

	/**
	 * Gives the person the roles, lets them do it all, and takes the roles away.
	 * @param beyond another county, over whose line they propose to move a tree
	 */
	static PlantedThings of(TestPerson owner, String county, String beyond, TestTrees trees, TestPeople people)
			throws Exception {
		PlantedThings planted = new PlantedThings(county, trees, people);
		planted.put("self", owner.id().toString());
		people.give(owner, CountyRole.of(county, Role.VERIFIER));
		planted.asVerifier(owner);
		people.give(owner, CountyRole.of(county, Role.COORDINATOR));
		planted.asCoordinator(owner, beyond);
		planted.token(owner);
		planted.title(owner);
		people.takeRoles(owner);
		return planted;
	}

	private void title(TestPerson owner) throws Exception {
		String titles = answer(this.trees.ask(get("/ogc/collections/titles/items?county=" + this.county), owner));
		put("title", JsonPath.read(titles, "$.features[0].id"));
	}

	String id(String name) {
		String id = this.ids.get(name);
		if (id == null) {
			throw new IllegalArgumentException("Nothing is planted by the name " + name);
		}
		return id;
	}

	boolean has(String name) {
		return this.ids.containsKey(name);
	}

	private void asVerifier(TestPerson owner) throws Exception {
		TestTrees.Filed waiting = nominate(owner);
		put("waiting", waiting.tree());
		put("waiting nomination", waiting.nomination());
		put("waiting measurement", waiting.measurement());
		TestTrees.Filed standing = nominate(owner);
		signOff(standing, this.people.verifier(this.county));
		put("standing", standing.tree());
		put("nomination", standing.nomination());
		put("measurement", standing.measurement());
		put("remeasurement", filed("/api/v1/trees/" + standing.tree() + "/measurements",
				TestTrees.measurement(101, "2025-05-02"), owner));
		put("sign-off", signOff(nominate(this.people.volunteer(this.county)), owner));
		put("condition-report", filed("/api/v1/trees/" + standing.tree() + "/condition-reports",
				"{\"condition\": \"damaged\", \"observedOn\": \"2025-06-01\"}", owner));
		String photos = "/api/v1/trees/" + standing.tree() + "/photos";
		put("photo", TestPhotos.sent(this.trees, photos, owner));
		put("waiting photo", id("photo"));
		put("passed photo", TestPhotos.sent(this.trees, photos, owner));
		answer(this.trees.decide("/api/v1/photos/" + id("passed photo"), "/decisions",
				"{\"decision\": \"pass\", \"text\": \"An oak.\"}", this.people.verifier(this.county)));
		put("visit", filed("/api/v1/visits",
				"{\"tree\": \"%s\", \"purpose\": \"condition\"}".formatted(standing.tree()), owner));
	}

	private String edition(TestPerson owner) throws Exception {
		return filed("/api/v1/counties/" + this.county + "/editions",
				"{\"name\": \"%s\", \"filingsBy\": \"2024-12-01\", \"graceDays\": 7, \"closesOn\": \"2024-12-31\"}"
					.formatted(UUID.randomUUID()),
				owner);
	}

	private void asCoordinator(TestPerson owner, String beyond) throws Exception {
		String moving = standing(owner).tree();
		put("relocation", JsonPath.read(answer(this.trees.decide("/api/v1/trees/" + moving, "/location", """
				{"location": {"latitude": 40.1, "longitude": -86.2, "accuracyMetres": 5}, "county": "%s",
				 "reason": "the stone"}""".formatted(beyond), owner)), "$.id"));
		String merged = standing(owner).tree();
		put("kept", standing(owner).tree());
		answer(this.trees.decide("/api/v1/trees/" + merged, "/merge",
				"{\"into\": \"%s\", \"reason\": \"the same\"}".formatted(id("kept")), owner));
		put("merged", merged);
		put("import", imported(owner));
		String file = JsonPath
			.read(answer(this.trees.send(multipart("/api/v1/counties/" + this.county + "/import-files")
				.part(new MockPart("file", "trees.csv", FILE.getBytes(UTF_8))), owner)), "$.id");
		put("import-file", file);
		put("file", file);
		signOffThatWaits(owner);
		put("owned", standing(owner).tree());
		put("owner", filed("/api/v1/trees/" + id("owned") + "/owners", "{\"name\": \"C. Landholder\"}", owner));
		put("edition", edition(owner));
		put("waiting edition", edition(owner));
		answer(this.trees.decide("/api/v1/editions/" + id("edition"), "/publication", "", owner));
		put("letter", filed("/api/v1/counties/" + this.county + "/letters",
				"{\"about\": \"tip\", \"text\": \"Look at it.\", \"tree\": \"%s\"}".formatted(id("standing")), owner));
		put("filed-for nomination", filed("/api/v1/counties/" + this.county + "/nominations", """
				{"species": "quercus-alba", "location": {"latitude": 40.1, "longitude": -86.2},
				 "filedFor": {"name": "D. Walker"}, "measurement": %s}"""
			.formatted(TestTrees.measurement(100, "2024-05-02")), owner));
		put("invitation", JsonPath.read(answer(this.trees.ask(post("/api/v1/invitations").content("""
				{"email": "%s@example.org", "roles": [{"county": "%s", "role": "volunteer"}]}"""
			.formatted(UUID.randomUUID(), this.county)), owner)), "$.token"));
		account(owner);
	}

	/** Someone of the county whose account may be managed. */
	private void account(TestPerson owner) throws Exception {
		TestPerson managed = this.people.volunteer(this.county);
		put("person", managed.id().toString());
		put("email", managed.email());
		put("role", JsonPath.read(answer(this.trees.ask(get("/api/v1/people/" + managed.id() + "/roles"), owner)),
				"$.items[0].id"));
		put("reset", JsonPath.read(
				answer(this.trees.ask(post("/api/v1/people/" + managed.id() + "/password-reset"), owner)), "$.token"));
	}

	/**
	 * Under rules that hold no longer than it takes.
	 */
	private void signOffThatWaits(TestPerson owner) throws Exception {
		askForACoordinator(true, owner);
		TestTrees.Filed filed = this.trees.nominate(this.county, this.people.volunteer(this.county), "quercus-rubra",
				TestTrees.measurement(100, "2024-05-02"));
		put("waiting sign-off", signOff(filed, this.people.verifier(this.county)));
		askForACoordinator(false, owner);
	}

	private void askForACoordinator(boolean needed, TestPerson owner) throws Exception {
		answer(this.trees.ask(post("/api/v1/counties/" + this.county + "/rulebooks").content(
				"""
						{"effectiveOn": "1900-01-01", "oldestFilingMonths": 1200, "titleNeedsCoordinator": %s, "reason": "a try"}"""
					.formatted(needed)),
				owner));
	}

	private TestTrees.Filed nominate(TestPerson owner) throws Exception {
		return this.trees.nominate(this.county, owner, "quercus-alba", TestTrees.measurement(100, "2024-05-02"));
	}

	private TestTrees.Filed standing(TestPerson owner) throws Exception {
		TestTrees.Filed filed = nominate(owner);
		signOff(filed, this.people.verifier(this.county));
		return filed;
	}

	private String signOff(TestTrees.Filed filed, TestPerson signer) throws Exception {
		return JsonPath.read(answer(this.trees.signOff(filed.measurement(), signer, "{\"verdict\": \"confirmed\"}")),
				"$.id");
	}

	private String filed(String address, String body, TestPerson owner) throws Exception {
		return JsonPath.read(answer(this.trees.ask(post(address).content(body), owner)), "$.id");
	}

	private String imported(TestPerson owner) throws Exception {
		String species = SPECIES.get(imports.getAndIncrement() % SPECIES.size());
		MockMultipartHttpServletRequestBuilder sent = multipart("/api/v1/counties/" + this.county + "/imports").part(
				new MockPart("file", "trees.csv",
						("name,girth,height,spread,lat,long\nAnother oak,90,80,40,40.1,-86.2\n" + species
								+ ",90,80,40,40.1,-86.2\n")
							.getBytes(UTF_8)),
				new MockPart("mapping", MAPPING.getBytes(UTF_8)));
		String id = JsonPath.read(answer(this.trees.send(sent, owner)), "$.id");
		Instant end = Instant.now().plus(PATIENCE);
		while (JsonPath.read(answer(this.trees.ask(get("/api/v1/imports/" + id), owner)), "$.finishedAt") == null) {
			if (Instant.now().isAfter(end)) {
				throw new AssertionError("The import " + id + " does not end");
			}
			Thread.sleep(50);
		}
		put("imported",
				JsonPath.read(answer(this.trees
					.ask(get("/api/v1/trees").param("county", this.county).param("query", species), owner)),
						"$.items[0].id"));
		return id;
	}

	private void token(TestPerson owner) throws Exception {
		put("token", JsonPath.read(answer(this.trees.ask(get("/api/v1/tokens"), owner)), "$.items[0].id"));
	}

	private void put(String name, String id) {
		this.ids.put(name, id);
	}

	private static String answer(ResultActions asked) throws Exception {
		String body = asked.andReturn().getResponse().getContentAsString();
		if (asked.andReturn().getResponse().getStatus() / 100 != 2) {
			throw new AssertionError("Could not be planted: " + body);
		}
		return body;
	}

}

package county.bigtree.registry.journal.web;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.UnaryOperator;

import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.audit.Findings;
import county.bigtree.registry.audit.RegisterCheck;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SealJournal;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.abort;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * The journal is sealed once a day, and the stand-alone checker, which shares no line
 * with the service, finds what is published whole, and names what was changed in it.
 */
@RegistryTest
class SealsIT {

	private static final String CHECKER = "src/checker/check_journal.py";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private List<RegisterCheck> checks;

	@Autowired
	private SealJournal seals;

	@Autowired
	private RegisterClock clock;

	@TempDir
	private Path folder = Path.of("target");

	@Test
	void aDayIsSealedOnceAndItsSealNamesTheHeads() throws Exception {
		this.trees.county("sealonce", "SEA");
		String before = sealOnANewDay();
		String latest = read("/api/v1/seals/latest");
		Instant at = Instant.parse(JsonPath.read(latest, "$.sealedAt"));
		assertThat(this.clock.replayAt(at.plusSeconds(1), this.seals::seal)).isFalse();
		assertThat(JsonPath.<Integer>read(latest, "$.number"))
			.isEqualTo(JsonPath.<Integer>read(before, "$.number") + 1);
		assertThat(JsonPath.<String>read(latest, "$.text")).contains("{\"county\":\"sealonce\",\"hash\":\"");
		assertThat(read("/api/v1/seals/" + JsonPath.read(latest, "$.number"))).isEqualTo(latest);
		assertThat(JsonPath.<List<Integer>>read(read("/api/v1/seals?limit=2"), "$.items[*].number"))
			.containsExactly(JsonPath.read(latest, "$.number"), JsonPath.read(before, "$.number"));
	}

	@Test
	void theCheckerFindsWhatIsPublishedWhole() throws Exception {
		this.trees.county("sealwhole", "SEB");
		this.trees.standing("sealwhole", 100, "2024-05-02");
		sealOnANewDay();
		String noted = noted();
		this.trees.standing("sealwhole", 110, "2024-05-03");
		assertThat(check(exported(), noted)).startsWith("0 whole: ").endsWith("1 seals as written down");
	}

	/**
	 * Words of letters and owners, why a nomination was taken back, who found a tree and
	 * how they are called: all by digest in what was sealed before.
	 */
	@Test
	void erasingWordsOfAllKindsLeavesWhatWasSealedWhole() throws Exception {
		this.trees.county("sealwords", "SEF");
		TestPerson coordinator = this.people.coordinator("sealwords");
		TestPerson nominator = this.people.volunteer("sealwords");
		String nomination = made("/api/v1/counties/sealwords/nominations",
				"""
						{"species": "quercus-alba", "location": {"latitude": 40.1, "longitude": -86.2},
						 "filedFor": {"name": "zqsealed N", "contact": "zqsealed C", "credit": "zqsealed W", "consentToCredit": true},
						 "measurement": %s}"""
					.formatted(TestTrees.measurement(100, "2020-05-02")),
				nominator);
		this.trees
			.decide("/api/v1/nominations/" + JsonPath.read(nomination, "$.id"), "/moves",
					"{\"move\": \"withdraw\", \"reason\": \"zqsealed reason\"}", nominator)
			.andExpect(status().isOk());
		String owner = made("/api/v1/trees/" + JsonPath.read(nomination, "$.tree") + "/owners",
				"{\"name\": \"zqsealed O\", \"contact\": \"zqsealed mill\"}", coordinator);
		String letter = made("/api/v1/counties/sealwords/letters",
				"{\"about\": \"tip\", \"text\": \"zqsealed elm\", \"contact\": \"zqsealed hut\"}", coordinator);
		sealOnANewDay();
		String noted = noted();
		List<String> before = changesOf("sealwords");
		erase("/api/v1/owners/" + JsonPath.read(owner, "$.id"), coordinator).andExpect(status().isOk());
		erase("/api/v1/letters/" + JsonPath.read(letter, "$.id"), coordinator).andExpect(status().isOk());
		erase("/api/v1/nominations/" + JsonPath.read(nomination, "$.id") + "/filed-for", coordinator)
			.andExpect(status().isOk());
		erase("/api/v1/people/" + nominator.id(), this.people.administrator()).andExpect(status().isNoContent());
		assertThat(
				this.jdbc.sql("select count(*) from text_body where body like '%zqsealed%'").query(Long.class).single())
			.isZero();
		assertThat(changesOf("sealwords")).startsWith(before.toArray(String[]::new)).hasSizeGreaterThan(before.size());
		assertThat(check(exported(), noted)).startsWith("0 whole: ").endsWith("1 seals as written down");
		List<String> found = new ArrayList<>();
		this.checks.forEach((check) -> check.look(new Findings(1000, found::add, (looked) -> {
		})));
		assertThat(found).noneMatch((sentence) -> sentence.contains("sealwords"));
	}

	private List<String> changesOf(String county) throws Exception {
		return exported().stream().filter((line) -> line.startsWith("{\"county\":\"" + county + "\"")).toList();
	}

	private ResultActions erase(String address, TestPerson person) throws Exception {
		return this.trees.ask(post(address + "/erasure"), person);
	}

	private String made(String address, String body, TestPerson person) throws Exception {
		return this.trees.ask(post(address).content(body), person)
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString();
	}

	@Test
	void theCheckerNamesTheFirstEntryThatWasFlipped() throws Exception {
		this.trees.county("sealflip", "SEC");
		this.trees.standing("sealflip", 100, "2024-05-02");
		sealOnANewDay();
		String flipped = "\"county\":\"sealflip\",\"seq\":2,";
		assertThat(check(changed(flipped, (line) -> flip(line, "\"digest\":\""))))
			.contains("sealflip, change 2, ", "its hash does not follow from its digest")
			.startsWith("1 ");
		assertThat(check(changed(flipped, (line) -> flip(line, "\"hash\":\"")))).contains("sealflip, change 2, ");
		assertThat(check(changed(flipped, (line) -> ""))).contains("sealflip, change 3, ", "follows change 1");
		assertThat(check(changed("\"seal\":1,", (line) -> flip(line, "\\\"hash\\\":\\\"")))).contains("seal 1: ");
	}

	@Test
	void aSealWrittenDownFindsAJournalThatWasForgedThroughout() throws Exception {
		this.trees.county("sealforged", "SED");
		sealOnANewDay();
		String latest = read("/api/v1/seals/latest");
		assertThat(check(exported(), JsonPath.<Integer>read(latest, "$.number") + ":" + "0".repeat(64)))
			.startsWith("1 seal " + JsonPath.read(latest, "$.number") + " is ")
			.contains("was written down");
		assertThat(check(changed("\"seal\":" + JsonPath.read(latest, "$.number") + ",", (line) -> ""), noted()))
			.contains("is not there");
	}

	@Test
	void whatIsPublishedHoldsNothingButDigests() throws Exception {
		this.trees.county("sealbare", "SEE");
		this.trees.standing("sealbare", 100, "2024-05-02");
		assertThat(exported().stream().filter((line) -> line.contains("sealbare") && !line.contains("\"seal\":")))
			.hasSizeGreaterThan(2)
			.allMatch(
					(line) -> line.matches("\\{\"county\":\"sealbare\",\"seq\":\\d+,\"recordedAt\":\"[0-9T:.Z-]{27}\","
							+ "\"digest\":\"[0-9a-f]{64}\",\"hash\":\"[0-9a-f]{64}\"}"));
	}

	/** Answers the seal before it. */
	private String sealOnANewDay() throws Exception {
		this.seals.seal();
		String before = read("/api/v1/seals/latest");
		Instant next = Instant.parse(JsonPath.read(before, "$.sealedAt")).plus(Duration.ofDays(1));
		assertThat(this.clock.replayAt(next, this.seals::seal)).isTrue();
		return before;
	}

	private String noted() throws Exception {
		String latest = read("/api/v1/seals/latest");
		return JsonPath.read(latest, "$.number") + ":" + JsonPath.read(latest, "$.hash");
	}

	private String read(String address) throws Exception {
		return this.mvc.perform(get(address)).andReturn().getResponse().getContentAsString();
	}

	private List<String> exported() throws Exception {
		return read("/exports/journal.jsonl").lines().toList();
	}

	private List<String> changed(String line, UnaryOperator<String> how) throws Exception {
		List<String> lines = new ArrayList<>(exported());
		assertThat(lines).anyMatch((one) -> one.contains(line));
		lines.replaceAll((one) -> one.contains(line) ? how.apply(one) : one);
		lines.remove("");
		return lines;
	}

	private static String flip(String line, String before) {
		int at = line.indexOf(before) + before.length();
		return line.substring(0, at) + ((line.charAt(at) == 'a') ? 'b' : 'a') + line.substring(at + 1);
	}

	/** Answers what the checker answers and says. */
	private String check(List<String> lines, String... noted) throws Exception {
		Path journal = Files.write(this.folder.resolve("journal.jsonl"), lines);
		List<String> command = new ArrayList<>(List.of("python3", CHECKER, journal.toString()));
		command.addAll(List.of(noted));
		Process checker = start(command);
		String said = new String(checker.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
		assertThat(checker.waitFor(60, TimeUnit.SECONDS)).isTrue();
		return checker.exitValue() + " " + said;
	}

	private static Process start(List<String> command) {
		try {
			return new ProcessBuilder(command).redirectErrorStream(true).start();
		}
		catch (IOException ex) {
			return abort("The checker needs python3, which is not at hand: " + ex.getMessage());
		}
	}

}

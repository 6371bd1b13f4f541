package county.bigtree.registry.pages.office;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockPart;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

/**
 * An older list taken in by pages alone: guessed, put right, rehearsed, taken in, its
 * names matched, and taken back.
 */
@RegistryTest
class ImportPagesIT {

	private static final Duration PATIENCE = Duration.ofSeconds(30);

	private static final String LIST = """
			No,Tree,Seen,DBH (cm),Height (m),Spread (m),Lat,Long,Owner,Remarks
			1,white oak,June 1998,120,27,25,40.1001,-86.2001,B. Landholder,fine
			2,Moon oak of nowhere,June 1998,118,26,24,40.2001,-86.2001,,
			3,Moon oak of nowhere,June 1998,110,26,24,40.3001,-86.2001,,
			4,white oak,June 1998,110,26,24,by the mill,-86.2001,,
			""";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestPeople people;

	@Autowired
	private TestTrees trees;

	@Test
	void takesInAListByHandAndTakesItBack() throws Exception {
		this.trees.county("officelist", "OFI");
		Visitor coordinator = Visitor.signedIn(this.mvc, this.people.coordinator("officelist"));
		coordinator.see("/desk/officelist/imports");
		MockHttpServletResponse brought = coordinator.upload("/desk/officelist/imports", file(LIST));
		String map = coordinator.follow(brought);
		String address = String.valueOf(brought.getHeader(HttpHeaders.LOCATION));
		assertThat(map).contains("This is a guess", "B. Landholder", "<option value=\"DBH (cm)\" selected=\"selected\"",
				"<option value=\"diameter\" selected=\"selected\"", "<option value=\"cm\" selected=\"selected\"");
		MockHttpServletResponse noBasis = coordinator.send(address, with("basis", "", "do", "look"));
		assertThat(noBasis.getStatus()).isEqualTo(422);
		assertThat(noBasis.getContentAsString()).contains("href=\"#basis\"", "<option value=\"DBH (cm)\" selected");
		String rehearsed = ended(coordinator, coordinator.send(address, with("basis", "Survey of 1998", "do", "look")));
		assertThat(rehearsed).contains("Rehearsal of an older list", "nothing was written", "Moon oak of nowhere");
		assertThat(counts(rehearsed)).containsExactly("1", "0", "0", "2", "1", "0");
		assertThat(ranked()).doesNotContain("OFI-");
		String file = address.substring(address.lastIndexOf('/') + 1);
		MockHttpServletResponse taken = coordinator.send("/desk/officelist/imports/files/" + file, "do", "again");
		String page = ended(coordinator, taken);
		assertThat(counts(page)).containsExactly("1", "0", "0", "2", "1", "0");
		String job = String.valueOf(taken.getHeader(HttpHeaders.LOCATION));
		assertThat(coordinator.ask(get(address)).getStatus()).isEqualTo(404);
		assertThat(coordinator.ask(get(Visitor.found(page, "href=\"(/api/v1/imports/[^\"]+/rejected.csv)\"")))
			.getContentAsString()).contains("by the mill");
		matched(coordinator, job);
		withdrawn(coordinator, job);
	}

	private void matched(Visitor coordinator, String job) throws Exception {
		MockHttpServletResponse unknown = coordinator.send(job + "/names", "name", "Moon oak of nowhere", "species",
				"nothing that grows");
		assertThat(unknown.getStatus()).isEqualTo(422);
		assertThat(coordinator.go(job + "/names", "name", "Moon oak of nowhere", "species", "northern red oak"))
			.contains("The name is matched");
		Instant end = Instant.now().plus(PATIENCE);
		while (!counts(coordinator.see(job)).get(3).equals("0") && Instant.now().isBefore(end)) {
			Thread.sleep(100);
		}
		assertThat(counts(coordinator.see(job))).containsExactly("3", "0", "0", "0", "1", "0");
	}

	private void withdrawn(Visitor coordinator, String job) throws Exception {
		String seen = Visitor.found(coordinator.see(job), "name=\"seen\" value=\"([^\"]+)\"");
		MockHttpServletResponse looked = coordinator.send(job + "/withdrawal", "reason", "the wrong county", "seen",
				seen, "do", "look");
		assertThat(looked.getStatus()).isEqualTo(200);
		assertThat(looked.getContentAsString()).contains("Nothing is decided yet", "value=\"the wrong county\"",
				"3 scores change");
		assertThat(ranked()).contains("quercus-rubra");
		assertThat(coordinator.go(job + "/withdrawal", "reason", "the wrong county", "seen", seen, "do", "decide"))
			.contains("taken back");
		Instant end = Instant.now().plus(PATIENCE);
		while (ranked().matches(".*\"total\":[1-9].*") && Instant.now().isBefore(end)) {
			Thread.sleep(100);
		}
		assertThat(ranked()).contains("\"total\":0").doesNotContainPattern("\"total\":[1-9]");
	}

	private String ranked() throws Exception {
		return this.mvc.perform(get("/api/v1/counties/officelist/standings"))
			.andReturn()
			.getResponse()
			.getContentAsString();
	}

	@Test
	void throwsAFileAwayAndRefusesWhatIsNoList() throws Exception {
		this.trees.county("officefile", "OFF");
		Visitor coordinator = Visitor.signedIn(this.mvc, this.people.coordinator("officefile"));
		coordinator.see("/desk/officefile/imports");
		assertThat(coordinator.send("/desk/officefile/imports").getStatus()).isEqualTo(422);
		MockHttpServletResponse twice = coordinator.upload("/desk/officefile/imports", file("a,a\n1,2\n"));
		assertThat(twice.getStatus()).isEqualTo(422);
		assertThat(twice.getContentAsString()).contains("two columns called a", "href=\"#file\"");
		MockHttpServletResponse brought = coordinator.upload("/desk/officefile/imports", file(LIST));
		String address = String.valueOf(brought.getHeader(HttpHeaders.LOCATION));
		assertThat(coordinator.see("/desk/officefile/imports")).contains(address);
		assertThat(Visitor.signedIn(this.mvc, this.people.coordinator("officelarge")).ask(get(address)).getStatus())
			.isEqualTo(403);
		MockHttpServletResponse more = coordinator.send(address, "visits", "1", "do", "more");
		assertThat(more.getContentAsString()).contains("Visit 2", "name=\"visits.1.girth\"");
		assertThat(coordinator.go(address + "/deletion")).contains("thrown away").doesNotContain(address);
	}

	private static MockPart file(String text) {
		return new MockPart("file", "list.csv", text.getBytes(StandardCharsets.UTF_8));
	}

	/** The page of the import once it is worked through. */
	private static String ended(Visitor coordinator, MockHttpServletResponse begun) throws Exception {
		String page = coordinator.follow(begun);
		Instant end = Instant.now().plus(PATIENCE);
		while (page.contains("data-import") && Instant.now().isBefore(end)) {
			Thread.sleep(100);
			page = coordinator.see(String.valueOf(begun.getHeader(HttpHeaders.LOCATION)));
		}
		return page;
	}

	private static java.util.List<String> counts(String page) {
		return java.util.regex.Pattern.compile("<li><strong>([0-9]+)</strong>")
			.matcher(page)
			.results()
			.map((found) -> found.group(1))
			.toList();
	}

	/** The guess as the form sends it. */
	private static String[] with(String... more) {
		String[] guessed = { "visits", "1", "species", "Tree", "tag", "No", "latitude", "Lat", "longitude", "Long",
				"locationAccuracyMetres", "20", "owner", "Owner", "visitNotes", "Remarks", "rowKey", "No", "incomplete",
				"keep", "visits.0.measuredOn", "Seen", "visits.0.girth", "DBH (cm)", "visits.0.girth.method",
				"diameter", "visits.0.girth.unit", "cm", "visits.0.height", "Height (m)", "visits.0.height.unit", "m",
				"visits.0.crown", "Spread (m)", "visits.0.crown.unit", "m" };
		String[] all = java.util.Arrays.copyOf(guessed, guessed.length + more.length);
		System.arraycopy(more, 0, all, guessed.length, more.length);
		return all;
	}

}

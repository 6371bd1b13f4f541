package county.bigtree.registry.round;

import java.io.StringReader;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;

import javax.xml.XMLConstants;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.SchemaFactory;

import biweekly.Biweekly;
import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import com.jayway.jsonpath.JsonPath;
import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;
import org.xmlunit.builder.Input;
import org.xmlunit.xpath.JAXPXPathEngine;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.ResultActions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Rounds over HTTP and to take along: GPX is held against its published schema, calendars
 * are held against the lines of RFC 5545 and read back. The library that reads them also
 * wrote them: the other one there is puts itself between Java and its time zones.
 */
@RegistryTest
class RoundHttpIT {

	private static final String TWO_YEARS = "{\"effectiveOn\": \"1800-01-01\", \"currencyYears\": 2, \"oldestFilingMonths\": 1200}";

	@Autowired
	private TestTrees trees;

	@Autowired
	private TestPeople people;

	@Test
	void passesEachTreeOnceWithAllThereIsToDo() throws Exception {
		this.trees.county("roundland", "RNA", TWO_YEARS);
		String far = at("roundland", 200, 40.19);
		String near = at("roundland", 190, 40.11);
		TestPerson coordinator = this.people.coordinator("roundland");
		TestPerson verifier = this.people.verifier("roundland");
		plan(coordinator, far, verifier, ", \"notes\": \"Ring at the <white> gate & wait.\"");
		plan(coordinator, near, verifier, "");
		plan(coordinator, near, coordinator, "");
		ask("/api/v1/visits/round?county=roundland&from=40.1,%20-86.2", coordinator).andExpect(status().isOk())
			.andExpect(jsonPath("$.stops.length()").value(2))
			.andExpect(jsonPath("$.stops[0].tree").value(near))
			.andExpect(jsonPath("$.stops[0].visits.length()").value(2))
			.andExpect(jsonPath("$.stops[0].place.latitude").value(40.11))
			.andExpect(jsonPath("$.stops[0].due").isEmpty())
			.andExpect(jsonPath("$.stops[1].tree").value(far))
			// Of the meridian at 40.15 degrees, 0.08 degrees: its radius of curvature
			// there
			// on WGS 84, 6,361,981 m, times the angle.
			.andExpect(jsonPath("$.stops[1].metresFromLast").value(8883))
			.andExpect(jsonPath("$.metres").value(9993));
		ask("/api/v1/visits/round?mine=true", verifier).andExpect(jsonPath("$.stops.length()").value(2))
			.andExpect(jsonPath("$.stops[0].visits.length()").value(1));
		ask("/api/v1/visits/round?county=roundland&due=true", coordinator)
			.andExpect(jsonPath("$.stops.length()").value(2))
			.andExpect(jsonPath("$.stops[0].due.why").value("stale"));
		String openings = ask("/api/v1/counties/roundland/openings", coordinator).andReturn()
			.getResponse()
			.getContentAsString();
		assertThat(JsonPath.<List<String>>read(openings, "$.items[*].what")).hasSize(6).containsOnly("place");
	}

	@Test
	void passesFilingsAssignedToOneselfThatHaveNoVisit() throws Exception {
		this.trees.county("roundassigned", "RNE");
		TestPerson coordinator = this.people.coordinator("roundassigned");
		TestPerson verifier = this.people.verifier("roundassigned");
		TestTrees.Filed filed = this.trees.standing("roundassigned", 200, "2024-05-02");
		String again = JsonPath.read(this.trees
			.ask(post("/api/v1/trees/" + filed.tree() + "/measurements")
				.content(TestTrees.measurement(201, "2024-06-02")), filed.filer())
			.andExpect(status().isCreated())
			.andReturn()
			.getResponse()
			.getContentAsString(), "$.id");
		String move = "{\"move\": \"assign\", \"verifier\": \"%s\"}".formatted(verifier.id());
		this.trees.decide("/api/v1/measurements/" + again, "/moves", move, coordinator).andExpect(status().isOk());
		ask("/api/v1/visits/round", verifier).andExpect(jsonPath("$.stops.length()").value(1))
			.andExpect(jsonPath("$.stops[0].tree").value(filed.tree()))
			.andExpect(jsonPath("$.stops[0].visits").isEmpty())
			.andExpect(jsonPath("$.stops[0].filings[0].measurement").value(again))
			.andExpect(jsonPath("$.stops[0].filings[0].kind").value("remeasurement"))
			.andExpect(jsonPath("$.stops[0].place.latitude").value(40.1));
		ask("/api/v1/visits/round?county=roundland", verifier).andExpect(jsonPath("$.stops").isEmpty());
		ask("/api/v1/visits/round", coordinator).andExpect(jsonPath("$.stops").isEmpty());
		assertThat(read(gpx("roundassigned", "", verifier), "desc"))
			.isEqualTo("white oak: Sign off what was measured 2024-06-02");
		plan(coordinator, filed.tree(), verifier, "");
		ask("/api/v1/visits/round", verifier).andExpect(jsonPath("$.stops[0].filings").isEmpty())
			.andExpect(jsonPath("$.stops[0].visits.length()").value(1));
	}

	@Test
	void isWrittenInGpxByItsSchema() throws Exception {
		this.trees.county("roundgpx", "RNB");
		TestPerson coordinator = this.people.coordinator("roundgpx");
		String empty = gpx("roundgpx", "", coordinator);
		assertThat(xpath(empty, "count(/*/*[local-name()='wpt'])")).isEqualTo("0");
		plan(coordinator, at("roundgpx", 200, 40.123457), coordinator,
				", \"notes\": \"Ring at the <white> gate & wait. \\ud83c\\udf33\", \"byWhen\": \"2999-06-30\"");
		plan(coordinator, at("roundgpx", 190, 40.11), coordinator, "");
		String gpx = gpx("roundgpx", "?from=40.2,-86.2", coordinator);
		assertThat(read(gpx, "name")).isEqualTo("RNB-0001");
		assertThat(read(gpx, "desc")).isEqualTo("white oak: Look into a doubt by 2999-06-30");
		assertThat(read(gpx, "cmt")).contains("Ring at the <white> gate & wait. \ud83c\udf33");
		assertThat(xpath(gpx, "//*[local-name()='rtept'][1]/*[local-name()='name']")).isEqualTo("RNB-0001");
		assertThat(xpath(gpx, "/*/*[local-name()='wpt'][1]/@lat")).isEqualTo("40.123457");
	}

	@Test
	void tellsCalendarsTheDaysAndNoPlace() throws Exception {
		this.trees.county("roundics", "RNC", TWO_YEARS);
		TestPerson coordinator = this.people.coordinator("roundics");
		LocalDate measured = LocalDate.now(ZoneOffset.UTC).minusMonths(18);
		String tree = this.trees.standing("roundics", 200, measured.toString()).tree();
		plan(coordinator, tree, coordinator,
				", \"arrangedAt\": \"2999-06-10T14:00:00Z\", \"notes\": \"dog at the gate\", \"companion\": \"the ranger\"");
		plan(coordinator, tree, coordinator, ", \"byWhen\": \"2999-07-01\"");
		plan(coordinator, tree, coordinator, "");
		ICalendar due = calendar("roundics", "due.ics", coordinator);
		assertThat(due.getEvents()).hasSize(1);
		VEvent event = due.getEvents().get(0);
		assertThat(event.getSummary().getValue()).isEqualTo("Measure RNC-0001 again: white oak");
		assertThat(event.getDateStart().getValue().hasTime()).isFalse();
		assertThat(event.getDateStart().getValue().getRawComponents().toString(false, false))
			.isEqualTo(measured.plusYears(2).format(DateTimeFormatter.BASIC_ISO_DATE));
		assertThat(event.getUrl().getValue()).isEqualTo("http://localhost/t/RNC-0001");
		assertThat(event.getTransparency().isTransparent()).isTrue();
		ICalendar visits = calendar("roundics", "visits.ics", coordinator);
		assertThat(visits.getEvents()).hasSize(2);
		assertThat(visits.getEvents().get(0).getDateStart().getValue().toInstant()).hasToString("2999-06-10T14:00:00Z");
		assertThat(visits.getEvents().get(1).getDateStart().getValue().hasTime()).isFalse();
		assertThat(Biweekly.write(visits).go()).doesNotContain("gate", "ranger", "40.1", coordinator.creditName());
	}

	@Test
	void isForThoseWhoGoThere() throws Exception {
		this.trees.county("roundoff", "RND");
		TestPerson verifier = this.people.verifier("roundoff");
		ask("/api/v1/visits/round?county=roundoff&due=true", verifier).andExpect(status().isForbidden());
		ask("/api/v1/visits/round?due=true", verifier).andExpect(status().isBadRequest());
		ask("/api/v1/visits/round?from=home", verifier).andExpect(status().isBadRequest())
			.andExpect(jsonPath("$.parameter").value("from"));
		ask("/api/v1/visits/round?from=91,0", verifier).andExpect(status().isBadRequest());
		ask("/api/v1/visits/round?county=nowhere", verifier).andExpect(jsonPath("$.stops").isEmpty());
		ask("/api/v1/visits/round", verifier).andExpect(jsonPath("$.stops").isEmpty())
			.andExpect(jsonPath("$.metres").value(0));
		ask("/exports/roundoff/visits.gpx", this.people.volunteer("roundoff")).andExpect(status().isForbidden());
		ask("/exports/nowhere/visits.ics", verifier).andExpect(status().isForbidden());
		ask("/exports/roundoff/due.ics", verifier).andExpect(status().isForbidden());
		ask("/exports/roundoff/due.ics", this.people.coordinator("roundland")).andExpect(status().isForbidden());
	}

	private String at(String county, int girth, double latitude) throws Exception {
		String tree = this.trees.standing(county, girth, "2024-05-02").tree();
		TestPerson coordinator = this.people.coordinator(county);
		this.trees.decide("/api/v1/trees/" + tree, "/location",
				"{\"location\": {\"latitude\": %s, \"longitude\": -86.2, \"accuracyMetres\": 8}, \"reason\": \"surveyed\"}"
					.formatted(latitude),
				coordinator)
			.andExpect(status().isOk());
		return tree;
	}

	private void plan(TestPerson planner, String tree, TestPerson verifier, String more) throws Exception {
		this.trees
			.ask(post("/api/v1/visits").contentType("application/json")
				.content("{\"tree\": \"%s\", \"purpose\": \"doubt\", \"verifier\": \"%s\"%s}".formatted(tree,
						verifier.id(), more)),
					planner)
			.andExpect(status().isCreated());
	}

	private ResultActions ask(String address, TestPerson person) throws Exception {
		return this.trees.ask(get(URI.create(address)), person);
	}

	private String gpx(String county, String query, TestPerson person) throws Exception {
		String gpx = ask("/exports/" + county + "/visits.gpx" + query, person).andExpect(status().isOk())
			.andExpect(content().contentType("application/gpx+xml"))
			.andReturn()
			.getResponse()
			.getContentAsString(StandardCharsets.UTF_8);
		SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI)
			.newSchema(getClass().getResource("gpx-1.1.xsd"))
			.newValidator()
			.validate(new StreamSource(new StringReader(gpx)));
		return gpx;
	}

	private static String read(String gpx, String element) {
		return xpath(gpx, "(//*[local-name()='wpt'])[1]/*[local-name()='%s']".formatted(element));
	}

	private static String xpath(String gpx, String path) {
		return new JAXPXPathEngine().evaluate(path, Input.from(gpx).build());
	}

	private ICalendar calendar(String county, String name, TestPerson person) throws Exception {
		String text = ask("/exports/" + county + "/" + name, person).andExpect(status().isOk())
			.andExpect(content().contentType("text/calendar;charset=utf-8"))
			.andReturn()
			.getResponse()
			.getContentAsString(StandardCharsets.UTF_8);
		// RFC 5545, 3.1: lines end in CR LF and are at most 75 octets long.
		assertThat(text.split("\r\n"))
			.allSatisfy((line) -> assertThat(line.getBytes(StandardCharsets.UTF_8).length).isLessThanOrEqualTo(75));
		ICalendar calendar = Biweekly.parse(text).first();
		assertThat(calendar.validate(ICalVersion.V2_0)).isEmpty();
		return calendar;
	}

}

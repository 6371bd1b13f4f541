package county.bigtree.registry.pages.office;

import java.nio.charset.StandardCharsets;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.TestTrees;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockPart;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

/**
 * Counties founded, people invited and given roles, by pages alone.
 */
@RegistryTest
class PeoplePagesIT {

	private static final String CODE = "<code class=\"code\">([^<]+)</code>";

	private static final String SQUARE = "{\"type\":\"Feature\",\"properties\":{},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[[[-87,40],[-86,40],[-86,41],[-87,41],[-87,40]]]}}";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestPeople people;

	@Autowired
	private TestTrees trees;

	@Test
	void leadsAnAdministratorFromACountyToAVolunteerWhoFiles() throws Exception {
		Visitor administrator = Visitor.signedIn(this.mvc, this.people.administrator());
		administrator.see("/desk/counties");
		MockPart boundary = new MockPart("boundaryFile", "county.geojson", SQUARE.getBytes(StandardCharsets.UTF_8));
		String founded = administrator.follow(administrator.upload("/desk/counties", boundary, "name", "Office County",
				"state", "Nowhere", "countyKey", "officefounded", "timeZone", "America/Chicago", "tagPrefix", "OFC"));
		assertThat(founded).contains("href=\"/desk/people?county=officefounded\"", "Office County, Nowhere");
		assertThat(
				this.mvc.perform(get("/api/v1/counties/officefounded")).andReturn().getResponse().getContentAsString())
			.contains("\"Polygon\"");
		administrator.see("/desk/people?county=officefounded");
		MockHttpServletResponse invited = administrator.send("/desk/people/invitations", "email",
				"office-chief@example.org", "creditName", "C. Chief", "invitedRole", "coordinator", "invitedCounty",
				"officefounded");
		assertThat(invited.getContentAsString()).contains("/invitations#" + code(invited));
		Visitor coordinator = accepted(code(invited), "office-chief@example.org", "");
		assertThat(coordinator.see("/desk/officefounded/people")).contains("C. Chief", "coordinator");
		MockHttpServletResponse further = coordinator.send("/desk/officefounded/people/invitations", "email",
				"office-vol@example.org", "invitedRole", "volunteer");
		accepted(code(further), "office-vol@example.org", "V. Olunteer");
		assertThat(coordinator.see("/desk/officefounded/people")).contains("V. Olunteer", "office-vol@example.org");
	}

	private static String code(MockHttpServletResponse page) throws Exception {
		assertThat(page.getStatus()).as(page.getContentAsString()).isEqualTo(200);
		return Visitor.found(page.getContentAsString(), CODE);
	}

	private Visitor accepted(String code, String email, String creditName) throws Exception {
		Visitor invited = new Visitor(this.mvc);
		invited.see("/invitations");
		assertThat(invited.go("/invitations", "token", code, "creditName", creditName, "password",
				"a walk under the oaks"))
			.contains("Your account is open");
		MockHttpServletResponse again = invited.send("/invitations", "token", code, "creditName", creditName,
				"password", "a walk under the oaks");
		assertThat(again.getStatus()).isEqualTo(422);
		assertThat(again.getContentAsString()).contains("used already").doesNotContain("a walk under");
		return invited.signIn(email, "a walk under the oaks");
	}

	@Test
	void givesAndEndsRolesAndTellsThemByDay() throws Exception {
		this.trees.county("officeroles", "OFR");
		TestPerson person = this.people.volunteer("officeroles");
		Visitor coordinator = Visitor.signedIn(this.mvc, this.people.coordinator("officeroles"));
		coordinator.see("/desk/officeroles/people");
		assertThat(coordinator.go("/desk/officeroles/people/roles", "person", person.id().toString(), "role",
				"verifier", "from", "", "until", "2099-12-31"))
			.contains("The role is given", "until 31 December 2099");
		String page = coordinator.see("/desk/officeroles/people");
		String end = Visitor.found(page, "action=\"(/desk/officeroles/people/" + person.id()
				+ "/roles/[0-9a-f-]{36}/end)\"[^>]*>(?:(?!</form>).)*: verifier");
		assertThat(coordinator.go(end)).contains("The role has ended").doesNotContain("31 December 2099");
		assertThat(coordinator.see("/desk/officeroles/people?on=2001-01-01")).contains("Nobody holds a role");
		MockHttpServletResponse refused = coordinator.send("/desk/officeroles/people/roles", "person",
				person.id().toString(), "role", "verifier", "from", "2001-01-01", "until", "");
		assertThat(refused.getStatus()).isEqualTo(422);
		assertThat(refused.getContentAsString()).contains("value=\"2001-01-01\"", "href=\"#from\"");
	}

	@Test
	void letsSomebodyWhoForgotThePasswordChooseAnother() throws Exception {
		this.trees.county("officeforgot", "OFG");
		TestPerson person = this.people.volunteer("officeforgot");
		Visitor coordinator = Visitor.signedIn(this.mvc, this.people.coordinator("officeforgot"));
		coordinator.see("/desk/officeforgot/people");
		MockHttpServletResponse made = coordinator.send("/desk/officeforgot/people/" + person.id() + "/password-reset");
		Visitor forgetful = new Visitor(this.mvc);
		assertThat(forgetful.go("/password-reset", "token", code(made), "newPassword", "three lanterns on the hill"))
			.contains("The new password is set");
		forgetful.signIn(person.email(), "three lanterns on the hill").see("/account");
	}

	@Test
	void closesAnAccountAndOnlyTheAdministratorOpensItAgain() throws Exception {
		this.trees.county("officeclose", "OFX");
		TestPerson person = this.people.volunteer("officeclose");
		Visitor theirs = Visitor.signedIn(this.mvc, person);
		Visitor coordinator = Visitor.signedIn(this.mvc, this.people.coordinator("officeclose"));
		coordinator.see("/desk/officeclose/people");
		assertThat(coordinator.go("/desk/officeclose/people/" + person.id() + "/deactivation"))
			.contains("The account is closed");
		assertThat(theirs.ask(get("/account")).getStatus()).isEqualTo(401);
		assertThat(coordinator.send("/desk/people/" + person.id() + "/activation").getStatus()).isEqualTo(403);
		Visitor administrator = Visitor.signedIn(this.mvc, this.people.administrator());
		administrator.see("/desk/people");
		assertThat(administrator.go("/desk/people/" + person.id() + "/activation")).contains("open again");
		theirs.signIn(person.email(), TestPeople.PASSWORD).see("/account");
	}

	@Test
	void refusesACountyWithWhatIsWrongAndKeepsWhatWasTyped() throws Exception {
		Visitor administrator = Visitor.signedIn(this.mvc, this.people.administrator());
		administrator.see("/desk/counties");
		MockHttpServletResponse refused = administrator.send("/desk/counties", "name", "Bad Key County", "state",
				"Nowhere", "countyKey", "Bad Key", "timeZone", "America/Chicago", "boundary", "not json");
		assertThat(refused.getStatus()).isEqualTo(422);
		assertThat(refused.getContentAsString()).contains("value=\"Bad Key County\"", "This is no GeoJSON");
		MockHttpServletResponse key = administrator.send("/desk/counties", "name", "Bad Key County", "state", "Nowhere",
				"countyKey", "Bad Key", "timeZone", "America/Chicago");
		assertThat(key.getContentAsString()).contains("href=\"#countyKey\"");
	}

}

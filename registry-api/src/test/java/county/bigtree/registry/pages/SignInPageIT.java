package county.bigtree.registry.pages;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import jakarta.servlet.http.Cookie;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

/**
 * Signing in with the pages alone, and refusals as pages.
 */
@RegistryTest
class SignInPageIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestPeople people;

	@Test
	void leadsOnToThePageAskedFor() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		MockHttpServletResponse answer = html(form(person, TestPeople.PASSWORD, "/measure?girth=tape"));
		assertThat(answer.getStatus()).isEqualTo(302);
		assertThat(answer.getHeader(HttpHeaders.LOCATION)).isEqualTo("/measure?girth=tape");
		Cookie cookie = java.util.Objects.requireNonNull(answer.getCookie("session"));
		assertThat(html(get("/measure").cookie(cookie)).getContentAsString()).contains("My filings");
	}

	@Test
	void leadsToNoOtherSite() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		for (String elsewhere : new String[] { "//trees.example.org", "https://trees.example.org",
				"/\\trees.example" }) {
			MockHttpServletResponse answer = html(form(person, TestPeople.PASSWORD, elsewhere));
			assertThat(answer.getHeader(HttpHeaders.LOCATION)).isEqualTo("/");
		}
	}

	@Test
	void saysThatItFailedAndKeepsTheAddressButNotThePassword() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		MockHttpServletResponse answer = html(form(person, "not the password", "/mine"));
		assertThat(answer.getStatus()).isEqualTo(401);
		assertThat(answer.getContentAsString()).contains("Sign-in failed", person.email(), "value=\"/mine\"")
			.doesNotContain("not the password");
		assertThat(answer.getCookie("session")).isNull();
	}

	@Test
	void keepsAFormThatWasSentWithoutASession() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		MockHttpServletResponse asked = html(post("/sign-out").param("locality", "by the <mill>").param("key", "k"));
		assertThat(asked.getStatus()).isEqualTo(401);
		assertThat(asked.getContentAsString()).contains("name=\"kept.locality\" value=\"by the &lt;mill&gt;\"")
			.doesNotContain("kept.key");
		MockHttpServletResponse again = html(
				form(person, TestPeople.PASSWORD, "/sign-out").param("kept.locality", "by the <mill>"));
		assertThat(again.getStatus()).isEqualTo(200);
		assertThat(again.getContentAsString()).contains("action=\"/sign-out\"",
				"name=\"locality\" value=\"by the &lt;mill&gt;\"", "name=\"_csrf\"");
	}

	@Test
	void takesNoFormFromAnotherSite() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		assertThat(html(form(person, TestPeople.PASSWORD, "/").header("Sec-Fetch-Site", "cross-site")).getStatus())
			.isEqualTo(403);
		assertThat(html(form(person, TestPeople.PASSWORD, "/").header("Origin", "https://trees.example.org")
			.header("Host", "localhost")).getStatus()).isEqualTo(403);
		assertThat(html(
				form(person, TestPeople.PASSWORD, "/").header("Origin", "http://localhost").header("Host", "localhost"))
			.getStatus()).isEqualTo(302);
	}

	@Test
	void takesNoSignOutWithoutTheTokenOfTheSession() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		Cookie cookie = java.util.Objects
			.requireNonNull(html(form(person, TestPeople.PASSWORD, "/")).getCookie("session"));
		assertThat(html(post("/sign-out").cookie(cookie)).getStatus()).isEqualTo(403);
		assertThat(html(get("/").cookie(cookie)).getContentAsString()).contains("My filings");
	}

	@Test
	void showsRefusalsAsPagesToPeopleAndAsProblemsToPrograms() throws Exception {
		MockHttpServletResponse page = html(get("/trees/nothing-of-the-kind"));
		assertThat(page.getStatus()).isEqualTo(404);
		assertThat(page.getContentType()).startsWith("text/html");
		assertThat(page.getContentAsString()).contains("<h1>Nothing here</h1>");
		MockHttpServletResponse problem = this.mvc.perform(get("/trees/nothing-of-the-kind")).andReturn().getResponse();
		assertThat(problem.getContentType()).startsWith("application/problem+json");
		MockHttpServletResponse api = html(get("/api/v1/trees/nothing-of-the-kind"));
		assertThat(api.getContentType()).startsWith("application/problem+json");
	}

	private static MockHttpServletRequestBuilder form(TestPerson person, String password, String then) {
		return post("/sign-in").param("email", person.email()).param("password", password).param("then", then);
	}

	private MockHttpServletResponse html(MockHttpServletRequestBuilder asking) throws Exception {
		return this.mvc.perform(asking.header(HttpHeaders.ACCEPT, "text/html,application/xhtml+xml,*/*;q=0.8"))
			.andReturn()
			.getResponse();
	}

}

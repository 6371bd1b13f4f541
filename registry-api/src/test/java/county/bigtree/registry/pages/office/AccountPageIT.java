package county.bigtree.registry.pages.office;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

/**
 * One's own account by its page.
 */
@RegistryTest
class AccountPageIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestPeople people;

	@Test
	void asksWhoeverIsNotSignedInToSignIn() throws Exception {
		assertThat(new Visitor(this.mvc).ask(get("/account")).getStatus()).isEqualTo(401);
	}

	@Test
	void changesTheNamesAndTakesTheLegalOneAwayAgain() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		Visitor visitor = Visitor.signedIn(this.mvc, person);
		assertThat(visitor.see("/account")).contains(person.email(), "volunteer", "value=\"" + person.creditName());
		String changed = visitor.go("/account/names", "creditName", "T. <Measurer>", "legalName", "Theodora M.");
		assertThat(changed).contains("T. &lt;Measurer&gt;</h1>", "value=\"Theodora M.\"", "names are changed");
		assertThat(visitor.go("/account/names", "creditName", "T. Measurer", "legalName", ""))
			.doesNotContain("Theodora");
		MockHttpServletResponse refused = visitor.send("/account/names", "creditName", "", "legalName", "L");
		assertThat(refused.getStatus()).isEqualTo(422);
	}

	@Test
	void changesThePasswordAndNeverShowsIt() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		Visitor visitor = Visitor.signedIn(this.mvc, person);
		Visitor elsewhere = Visitor.signedIn(this.mvc, person);
		visitor.see("/account");
		MockHttpServletResponse wrong = visitor.send("/account/password", "presentPassword", "not this one",
				"newPassword", "seven small owls at noon");
		assertThat(wrong.getStatus()).isGreaterThanOrEqualTo(400);
		assertThat(wrong.getContentAsString()).doesNotContain("seven small owls", "not this one")
			.contains("id=\"presentPassword-error\"");
		String done = visitor.go("/account/password", "presentPassword", TestPeople.PASSWORD, "newPassword",
				"seven small owls at noon");
		assertThat(done).contains("password is changed", "<td>password changed</td>");
		assertThat(elsewhere.ask(get("/account")).getStatus()).isEqualTo(401);
		new Visitor(this.mvc).signIn(person.email(), "seven small owls at noon").see("/account");
	}

	@Test
	void makesATokenShowsItOnceAndTakesItBack() throws Exception {
		Visitor visitor = Visitor.signedIn(this.mvc, this.people.volunteer("larkmere"));
		visitor.see("/account");
		MockHttpServletResponse made = visitor.send("/account/tokens", "tokenName", "river walk", "scope", "read",
				"expiresOn", "");
		assertThat(made.getStatus()).isEqualTo(200);
		assertThat(made.getHeader(HttpHeaders.CACHE_CONTROL)).contains("no-store");
		String token = Visitor.found(made.getContentAsString(), "<code class=\"code\">([^<]+)</code>");
		assertThat(works(token)).isTrue();
		String account = visitor.see("/account");
		assertThat(account).contains("river walk", "…" + token.substring(token.length() - 4)).doesNotContain(token);
		String id = Visitor.found(account,
				"/account/tokens/([0-9a-f-]{36})/revocation\"[^>]*>(?:(?!</tr>).)*river walk");
		assertThat(visitor.go("/account/tokens/" + id + "/revocation")).doesNotContain("river walk");
		assertThat(works(token)).isFalse();
	}

	private boolean works(String token) throws Exception {
		return this.mvc.perform(get("/api/v1/session").header(HttpHeaders.AUTHORIZATION, "Bearer " + token))
			.andReturn()
			.getResponse()
			.getStatus() == 200;
	}

	@Test
	void keepsWhatWasTypedForATokenThatIsRefused() throws Exception {
		Visitor visitor = Visitor.signedIn(this.mvc, this.people.volunteer("larkmere"));
		visitor.see("/account");
		MockHttpServletResponse refused = visitor.send("/account/tokens", "tokenName", "old one", "scope", "all",
				"expiresOn", "2001-01-01");
		assertThat(refused.getStatus()).isEqualTo(422);
		assertThat(refused.getContentAsString()).contains("value=\"old one\"", "value=\"2001-01-01\"",
				"href=\"#expiresOn\"");
	}

	@Test
	void signsOutEverywhere() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		Visitor here = Visitor.signedIn(this.mvc, person);
		Visitor there = Visitor.signedIn(this.mvc, person);
		here.see("/account");
		here.send("/sign-out", "everywhere", "yes");
		assertThat(there.ask(get("/account")).getStatus()).isEqualTo(401);
		assertThat(here.ask(get("/account")).getStatus()).isEqualTo(401);
	}

	@Test
	void erasesNobodyWithoutTheTickAndThePassword() throws Exception {
		TestPerson person = this.people.volunteer("larkmere");
		Visitor visitor = Visitor.signedIn(this.mvc, person);
		assertThat(visitor.see("/account/erasure")).contains("What stays", "can&#39;t be undone");
		assertThat(visitor.send("/account/erasure", "presentPassword", TestPeople.PASSWORD).getStatus()).isEqualTo(422);
		assertThat(visitor.send("/account/erasure", "presentPassword", "another", "understood", "yes").getStatus())
			.isGreaterThanOrEqualTo(400);
		assertThat(visitor.see("/account")).contains(person.email());
		assertThat(visitor.go("/account/erasure", "presentPassword", TestPeople.PASSWORD, "understood", "yes"))
			.contains("erased");
		MockHttpServletResponse again = new Visitor(this.mvc).send("/sign-in", "email", person.email(), "password",
				TestPeople.PASSWORD);
		assertThat(again.getStatus()).isEqualTo(401);
	}

	@Test
	void showsTheWordsOneWrote() throws Exception {
		assertThat(Visitor.signedIn(this.mvc, this.people.volunteer("larkmere")).see("/account/words"))
			.contains("You have written nothing");
	}

}

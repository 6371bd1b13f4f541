package county.bigtree.registry.command;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.people.InvitePerson;
import county.bigtree.registry.people.ResetPassword;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.DefaultApplicationArguments;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

@RegistryTest
class ConsoleAccountsIT {

	@Autowired
	private MockMvc mvc;

	@Autowired
	private TestPeople people;

	@Autowired
	private InvitePerson invitePerson;

	@Autowired
	private ResetPassword resetPassword;

	private final ByteArrayOutputStream written = new ByteArrayOutputStream();

	@Test
	void invitesAnAdministratorThoughThereIsOne() throws Exception {
		this.people.administrator();
		String email = UUID.randomUUID() + "@example.org";
		assertThat(invite(email)).isEqualTo(RegisterCommand.WELL);
		send("/api/v1/invitations/acceptance", "{\"token\": \"" + secret("invitation_")
				+ "\", \"password\": \"nine herons over the mill\", \"creditName\": \"H. Fennick\"}", 201);
		send("/api/v1/session", "{\"email\": \"" + email + "\", \"password\": \"nine herons over the mill\"}", 200);
	}

	@Test
	void asksForOneAddress() {
		assertThat(invite()).isEqualTo(RegisterCommand.FAILED);
		assertThat(invite("not an address")).isEqualTo(RegisterCommand.FAILED);
		assertThat(invite("one@example.org", "two@example.org")).isEqualTo(RegisterCommand.FAILED);
		assertThat(reset("nobody-has-this@example.org")).isEqualTo(RegisterCommand.FAILED);
	}

	@Test
	void letsWhoeverHasTheConsoleResetAPassword() throws Exception {
		TestPerson person = this.people.administrator();
		assertThat(reset(person.email())).isEqualTo(RegisterCommand.WELL);
		send("/api/v1/people/password-reset",
				"{\"token\": \"" + secret("reset_") + "\", \"newPassword\": \"nine herons over the mill\"}", 204);
	}

	@Test
	void isAWordOfTheCommandLine() {
		assertThat(new CommandLine(Object.class).run(new String[] { "no-such-command" }))
			.isEqualTo(RegisterCommand.FAILED);
		assertThat(new InviteAdministrator(this.invitePerson, new DefaultApplicationArguments()).word())
			.isEqualTo("invite-administrator");
	}

	private int invite(String... words) {
		return new InviteAdministrator(this.invitePerson, new DefaultApplicationArguments(words)).run(report());
	}

	private int reset(String... words) {
		return new MakePasswordReset(this.resetPassword, new DefaultApplicationArguments(words)).run(report());
	}

	private Report report() {
		return new Report(new PrintStream(this.written, true, StandardCharsets.UTF_8), false);
	}

	private String secret(String prefix) {
		Matcher found = Pattern.compile(prefix + "[A-Za-z0-9_-]{43}")
			.matcher(this.written.toString(StandardCharsets.UTF_8));
		assertThat(found.find()).isTrue();
		return found.group();
	}

	private void send(String path, String body, int expected) throws Exception {
		this.mvc.perform(post(path).contentType(MediaType.APPLICATION_JSON).content(body))
			.andExpect(status().is(expected));
	}

}

package county.bigtree.registry.people;

import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.core.env.Environment;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * With {@code --registry.first-administrator=EMAIL}, prints a one-time invitation at
 * start, as long as nobody is administrator.
 */
@Component
@ConditionalOnProperty("registry.first-administrator")
class FirstAdministrator implements ApplicationRunner {

	private final InvitePerson invitePerson;

	private final JdbcClient jdbc;

	private final String email;

	FirstAdministrator(InvitePerson invitePerson, JdbcClient jdbc, Environment environment) {
		this.invitePerson = invitePerson;
		this.jdbc = jdbc;
		this.email = environment.getRequiredProperty("registry.first-administrator");
	}

	@Override
	public void run(ApplicationArguments arguments) {
		if (thereIsOne()) {
			System.out.println("There is an administrator already: no invitation was made.");
			return;
		}
		InvitePerson.Invited invited = this.invitePerson.inviteAdministrator(this.email);
		System.out.println("One-time invitation for the administrator " + invited.email() + ", open until "
				+ invited.expiresAt() + ": " + invited.secret());
		System.out.println("Open /invitations on this register in a browser and enter it there.");
		System.out.println("Or accept it with POST /api/v1/invitations/acceptance and a body of "
				+ "{\"token\": \"...\", \"password\": \"...\", \"creditName\": \"...\"}.");
	}

	private boolean thereIsOne() {
		return this.jdbc.sql("""
				select exists (select from role_assignment r join person p on p.id = r.person
					where r.role = 'administrator' and (r.until_at is null or r.until_at > now())
						and p.active)""").query(Boolean.class).single();
	}

}

package county.bigtree.registry.people;

import java.time.Instant;
import java.util.Collection;
import java.util.UUID;

import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Opens an account with a password known to all. There only in demo mode, which serves
 * nobody but the machine it runs on.
 */
@Component
@ConditionalOnProperty("registry.demo")
public class OpenDemoAccount {

	private final Accounts accounts;

	OpenDemoAccount(Accounts accounts) {
		this.accounts = accounts;
	}

	/** Returns the id of the person. */
	@Transactional
	public UUID open(String email, String creditName, String password, Collection<CountyRole> roles, Instant at) {
		UUID person = this.accounts.open(email, creditName, password, at).getId();
		this.accounts.give(person, roles, null, at);
		return person;
	}

}

package county.bigtree.registry.people;

import java.time.Clock;
import java.time.Instant;
import java.util.UUID;

import county.bigtree.registry.problem.Problem;

import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Closes an account, and opens it again. Closing ends sessions, tokens and roles at once
 * and hands open work back; what the person did stays theirs. Opened again it holds no
 * role until one is given.
 */
@Component
public class CloseAccount {

	private final People people;

	private final ManagedPeople managed;

	private final EndRole endRole;

	private final EndAccess endAccess;

	private final Clock clock;

	CloseAccount(People people, ManagedPeople managed, EndRole endRole, EndAccess endAccess, Clock clock) {
		this.people = people;
		this.managed = managed;
		this.endRole = endRole;
		this.endAccess = endAccess;
		this.clock = clock;
	}

	/** Closes it. Closing twice changes nothing. */
	@Transactional
	public void close(Actor by, UUID id) {
		close(person(this.managed.require(by, id)), by.id(), "Their account was closed.");
	}

	/** Opens it again, unless it was erased. */
	@Transactional
	public void open(UUID id) {
		Person person = person(id);
		if (person.isErased()) {
			throw Problem.notFound("There is no such person.");
		}
		person.activate(true);
	}

	void close(Person person, UUID by, String reason) {
		Instant now = this.clock.instant();
		this.endRole.endAll(person.getId(), by, now, reason);
		this.endAccess.of(person.getId(), now);
		person.activate(false);
	}

	private Person person(UUID id) {
		return this.people.findById(id).orElseThrow(() -> Problem.notFound("There is no such person."));
	}

}

package county.bigtree.registry.database;

import county.bigtree.registry.RegistryTest;
import county.bigtree.registry.people.TestPeople;
import county.bigtree.registry.people.TestPerson;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

/**
 * What the database says of a constraint that was broken is logged.
 */
@RegistryTest
class BreachesIT {

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private TestPeople people;

	@Test
	void nameTheConstraintAndNotTheRow() {
		TestPerson one = this.people.volunteer("larkmere");
		TestPerson other = this.people.volunteer("larkmere");
		DataIntegrityViolationException breach = catchThrowableOfType(DataIntegrityViolationException.class,
				() -> this.jdbc.sql("update person set email = ? where id = ?")
					.params(one.email(), other.id())
					.update());
		assertThat(breach.getMostSpecificCause().getMessage()).contains("violates unique constraint")
			.doesNotContain(one.email());
	}

}

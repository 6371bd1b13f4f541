package county.bigtree.registry.people;

import java.util.Optional;
import java.util.UUID;

import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;

/**
 * All accounts.
 */
interface People extends Repository<Person, UUID> {

	Person saveAndFlush(Person person);

	Optional<Person> findById(UUID id);

	@Query("select p from Person p where lower(p.email) = lower(:email)")
	Optional<Person> findByEmail(String email);

}

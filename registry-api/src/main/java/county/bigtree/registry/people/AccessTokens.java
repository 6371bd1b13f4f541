package county.bigtree.registry.people;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;

/**
 * All access tokens ever made.
 */
interface AccessTokens extends Repository<AccessToken, UUID> {

	AccessToken save(AccessToken token);

	Optional<AccessToken> findByIdAndPerson(UUID id, UUID person);

	/** Those that still work, newest first. */
	@Query("""
			select t from AccessToken t
			where t.person = :person and t.revokedAt is null and t.expiresOn >= :today order by t.id desc""")
	List<AccessToken> listWorking(UUID person, LocalDate today);

}

package county.bigtree.registry.people;

import java.util.Optional;
import java.util.UUID;

import jakarta.persistence.LockModeType;

import org.springframework.data.jpa.repository.Lock;
import org.springframework.data.repository.Repository;

/**
 * All invitations ever made.
 */
interface Invitations extends Repository<Invitation, UUID> {

	Invitation save(Invitation invitation);

	/** Locks it, so that only one of two who come at once gets in. */
	@Lock(LockModeType.PESSIMISTIC_WRITE)
	Optional<Invitation> findByHash(byte[] hash);

}

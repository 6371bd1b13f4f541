package county.bigtree.registry.people;

import java.time.Instant;
import java.util.UUID;

import county.bigtree.registry.id.Uuid7;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import org.hibernate.annotations.DynamicUpdate;
import jakarta.persistence.Transient;

import org.springframework.data.domain.Persistable;

/**
 * Someone with an account. The e-mail address is theirs alone, whatever its case; the
 * credit name is the one to be shown, which need not be the legal one.
 */
@Entity
@DynamicUpdate
@Table(name = "person")
class Person implements Persistable<UUID> {

	@Id
	private UUID id;

	private String email;

	private String creditName;

	private String passwordHash;

	private boolean active;

	private Instant createdAt;

	@Transient
	private boolean isNew;

	@SuppressWarnings("NullAway.Init")
	protected Person() {
	}

	Person(String email, String creditName, String passwordHash, Instant createdAt) {
		this.id = Uuid7.next();
		this.email = email;
		this.creditName = creditName;
		this.passwordHash = passwordHash;
		this.active = true;
		this.createdAt = createdAt;
		this.isNew = true;
	}

	@Override
	public UUID getId() {
		return this.id;
	}

	@Override
	public boolean isNew() {
		return this.isNew;
	}

	String email() {
		return this.email;
	}

	String creditName() {
		return this.creditName;
	}

	void changePassword(String hash) {
		this.passwordHash = hash;
	}

	String passwordHash() {
		return this.passwordHash;
	}

	boolean isActive() {
		return this.active;
	}

}

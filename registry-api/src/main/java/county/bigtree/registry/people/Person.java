package county.bigtree.registry.people;

import java.time.Instant;
import java.util.UUID;

import county.bigtree.registry.id.Uuid7;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import org.hibernate.annotations.DynamicUpdate;
import jakarta.persistence.Transient;
import org.jspecify.annotations.Nullable;

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

	private @Nullable String legalName;

	private String passwordHash;

	private boolean active;

	private Instant createdAt;

	private @Nullable Instant erasedAt;

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

	/** Takes the names given; an empty legal name takes it away. */
	void name(@Nullable String credit, @Nullable String legal) {
		if (credit != null) {
			this.creditName = credit.strip();
		}
		if (legal != null) {
			this.legalName = legal.isBlank() ? null : legal.strip();
		}
	}

	void activate(boolean open) {
		this.active = open;
	}

	boolean isErased() {
		return this.erasedAt != null;
	}

	/** Leaves nothing that tells who it was. */
	void erase(Instant now) {
		this.email = erasedAddress(this.id);
		this.creditName = "Somebody no longer named";
		this.legalName = null;
		this.passwordHash = "";
		this.active = false;
		this.erasedAt = now;
	}

	/** Belongs to nobody: the domain exists nowhere (RFC 2606). */
	static String erasedAddress(UUID id) {
		return id + "@erased.invalid";
	}

	OwnAccount.Kept kept() {
		return new OwnAccount.Kept(this.id, this.email, this.creditName, this.legalName, this.createdAt);
	}

	void changeEmail(String address) {
		this.email = address;
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

package county.bigtree.registry.people;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

import county.bigtree.registry.id.Uuid7;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import org.hibernate.annotations.DynamicUpdate;
import jakarta.persistence.Transient;
import org.jspecify.annotations.Nullable;

import org.springframework.data.domain.Persistable;

/**
 * A personal access token, as far as it is kept: its hash, and what its owner tells it
 * by. Works through its last day, in UTC, unless taken back.
 */
@Entity
@DynamicUpdate
@Table(name = "access_token")
class AccessToken implements Persistable<UUID> {

	@Id
	private UUID id;

	private UUID person;

	private String name;

	private byte[] hash;

	@Column(name = "last4")
	private String last4;

	private Instant createdAt;

	private LocalDate expiresOn;

	private String scope;

	private @Nullable LocalDate lastUsedOn;

	private @Nullable Instant revokedAt;

	@Transient
	private boolean isNew;

	@SuppressWarnings("NullAway.Init")
	protected AccessToken() {
	}

	AccessToken(UUID person, String name, String secret, Instant createdAt, LocalDate expiresOn, TokenScope scope) {
		this.id = Uuid7.next();
		this.person = person;
		this.name = name;
		this.hash = Secret.hash(secret);
		this.last4 = secret.substring(secret.length() - 4);
		this.createdAt = createdAt;
		this.expiresOn = expiresOn;
		this.scope = scope.code();
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

	/** Taking back twice changes nothing. */
	void revoke(Instant now) {
		if (this.revokedAt == null) {
			this.revokedAt = now;
		}
	}

	TokenSummary summary() {
		return new TokenSummary(this.id, this.name, this.last4, this.createdAt, this.expiresOn,
				TokenScope.ofCode(this.scope), this.lastUsedOn);
	}

}

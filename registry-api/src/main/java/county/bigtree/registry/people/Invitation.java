package county.bigtree.registry.people;

import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.UUID;

import county.bigtree.registry.id.Uuid7;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Embeddable;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.Table;
import org.hibernate.annotations.DynamicUpdate;
import jakarta.persistence.Transient;
import org.jspecify.annotations.Nullable;

import org.springframework.data.domain.Persistable;

/**
 * Lets one person in, once, within {@value #DAYS} days: for an e-mail address, with
 * roles. Its secret is shown to the one who invites, and only its hash is kept.
 */
@Entity
@DynamicUpdate
@Table(name = "invitation")
class Invitation implements Persistable<UUID> {

	static final int DAYS = 14;

	@Id
	private UUID id;

	private String email;

	private @Nullable String creditName;

	private byte[] hash;

	private Instant createdAt;

	private Instant expiresAt;

	private @Nullable UUID invitedBy;

	private @Nullable Instant acceptedAt;

	private @Nullable UUID acceptedBy;

	@ElementCollection(fetch = FetchType.EAGER)
	@CollectionTable(name = "invitation_role", joinColumns = @JoinColumn(name = "invitation"))
	private Set<Offered> roles = new LinkedHashSet<>();

	@Transient
	private boolean isNew;

	@SuppressWarnings("NullAway.Init")
	protected Invitation() {
	}

	Invitation(String email, @Nullable String creditName, Set<CountyRole> roles, String secret,
			@Nullable UUID invitedBy, Instant now) {
		this.id = Uuid7.next();
		this.email = email.strip();
		this.creditName = creditName;
		this.hash = Secret.hash(secret);
		this.createdAt = now;
		this.expiresAt = now.plus(Duration.ofDays(DAYS));
		this.invitedBy = invitedBy;
		roles.forEach((role) -> this.roles.add(new Offered(role.county(), role.role().code())));
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

	/** Open until it is accepted or its time is over. */
	boolean isOpen(Instant now) {
		return this.acceptedAt == null && now.isBefore(this.expiresAt);
	}

	void accept(UUID person, Instant now) {
		if (!isOpen(now)) {
			throw new IllegalStateException("the invitation is no longer open");
		}
		this.acceptedAt = now;
		this.acceptedBy = person;
	}

	String email() {
		return this.email;
	}

	@Nullable String creditName() {
		return this.creditName;
	}

	@Nullable UUID invitedBy() {
		return this.invitedBy;
	}

	Instant expiresAt() {
		return this.expiresAt;
	}

	Set<CountyRole> roles() {
		Set<CountyRole> offered = new LinkedHashSet<>();
		this.roles.forEach((one) -> offered.add(new CountyRole(one.county, Role.ofCode(one.role))));
		return offered;
	}

	/** A role as it stands in its row. */
	@Embeddable
	static class Offered {

		private @Nullable String county;

		@Column(name = "role")
		private String role;

		@SuppressWarnings("NullAway.Init")
		protected Offered() {
		}

		Offered(@Nullable String county, String role) {
			this.county = county;
			this.role = role;
		}

		@Override
		public boolean equals(@Nullable Object other) {
			return other instanceof Offered that && java.util.Objects.equals(this.county, that.county)
					&& this.role.equals(that.role);
		}

		@Override
		public int hashCode() {
			return java.util.Objects.hash(this.county, this.role);
		}

	}

}

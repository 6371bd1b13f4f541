package county.bigtree.registry.owner;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * An owner of a tree and all that they have said, newest first.
 *
 * @param name null where nothing was said, or the words were erased
 * @param contact the same
 * @param endedAt when the register learned that they own it no more, or null
 */
public record Owner(UUID id, UUID tree, @Nullable String name, @Nullable String contact, @Nullable UUID person,
		Instant recordedAt, @Nullable Instant endedAt, List<Consent> consents) {

	public Owner {
		consents = List.copyOf(consents);
	}

	Owner saying(List<Consent> said) {
		return new Owner(this.id, this.tree, this.name, this.contact, this.person, this.recordedAt, this.endedAt, said);
	}

	/**
	 * What they said for a purpose.
	 *
	 * @param until the last day on which a consent holds, or null
	 * @param holds whether this is their word today: the last for its purpose, given and
	 * not run out
	 */
	public record Consent(String purpose, boolean given, String how, LocalDate givenOn, @Nullable LocalDate until,
			Instant recordedAt, @Nullable String remarks, boolean holds) {
	}

}

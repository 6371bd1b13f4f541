package county.bigtree.registry.owner;

import java.util.UUID;

import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/**
 * An owner of a tree; a name or a person at least.
 *
 * @param name what they are called, private
 * @param contact how to reach them, private
 * @param person the account, where they have one
 */
public record OwnerBody(@Nullable @Size(max = 200) String name, @Nullable @Size(max = 500) String contact,
		@Nullable UUID person) {

	boolean names() {
		return this.person != null || this.name != null && !this.name.isBlank();
	}

}

package county.bigtree.registry.people.web;

import county.bigtree.registry.people.CountyRole;
import county.bigtree.registry.people.Role;
import jakarta.validation.constraints.NotNull;
import org.jspecify.annotations.Nullable;

/**
 * A role where it holds, as in requests and answers.
 *
 * @param county the key of the county; null for the administrator, and only there
 */
record RoleJson(@Nullable String county, @NotNull Role role) {

	static RoleJson from(CountyRole role) {
		return new RoleJson(role.county(), role.role());
	}

}

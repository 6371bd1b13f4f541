package county.bigtree.registry.people;

import org.jspecify.annotations.Nullable;

/**
 * A role where it holds.
 *
 * @param county the key of the county; null for the administrator, and only there
 */
public record CountyRole(@Nullable String county, Role role) {

	public CountyRole {
		if ((county == null) != (role == Role.ADMINISTRATOR)) {
			throw new IllegalArgumentException("county must be given for every role but administrator");
		}
	}

	public static CountyRole of(String county, Role role) {
		return new CountyRole(county, role);
	}

	public static CountyRole administrator() {
		return new CountyRole(null, Role.ADMINISTRATOR);
	}

}

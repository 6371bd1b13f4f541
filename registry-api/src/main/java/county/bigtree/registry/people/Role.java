package county.bigtree.registry.people;

import java.util.Locale;

/**
 * What a person may be in a county, from least to most: each includes those before it.
 * The administrator stands apart: runs the service, in no county.
 */
public enum Role {

	/** Nominates trees, files measurements and reports. */
	VOLUNTEER,

	/** Signs off on others' measurements. */
	VERIFIER,

	/** Decides what the register of the county says. */
	COORDINATOR,

	/** Sets up counties and accounts. */
	ADMINISTRATOR;

	/** As in JSON and in the database. */
	public String code() {
		return name().toLowerCase(Locale.ROOT);
	}

	public static Role ofCode(String code) {
		return valueOf(code.toUpperCase(Locale.ROOT));
	}

	public boolean includes(Role other) {
		return this == other || this != ADMINISTRATOR && other != ADMINISTRATOR && compareTo(other) > 0;
	}

}

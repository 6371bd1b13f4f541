package county.bigtree.registry.people;

import java.util.UUID;

/**
 * A person made for a test.
 *
 * @param token an access token of theirs
 */
public record TestPerson(UUID id, String email, String creditName, String token) {

	/** The value of the header with which they ask. */
	public String bearer() {
		return "Bearer " + this.token;
	}

}

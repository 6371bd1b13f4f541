package county.bigtree.registry.people;

import java.text.Normalizer;
import java.util.Collection;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * The person who asks, with the roles held at that moment. Controllers take it as an
 * argument ({@code Actor} where an account is needed, {@code @Nullable Actor} where
 * anyone may ask) and hand it to the use case, which judges.
 *
 * @param id of the person
 * @param creditName the name to be credited
 * @param administrator whether they run the service
 * @param roles the highest role held, by county
 * @param filesOnly whether they asked with a token that is good for a volunteer's part
 * only
 */
public record Actor(UUID id, String creditName, boolean administrator, Map<String, Role> roles, boolean filesOnly) {

	public Actor {
		roles = Map.copyOf(roles);
	}

	public Actor(UUID id, String creditName, boolean administrator, Map<String, Role> roles) {
		this(id, creditName, administrator, roles, false);
	}

	/** Several roles in one county come down to the highest. */
	static Actor of(UUID id, String creditName, Collection<CountyRole> held) {
		Map<String, Role> highest = new HashMap<>();
		boolean administrator = false;
		for (CountyRole one : held) {
			if (one.county() == null) {
				administrator = true;
			}
			else {
				highest.merge(one.county(), one.role(), (a, b) -> a.includes(b) ? a : b);
			}
		}
		return new Actor(id, creditName, administrator, highest);
	}

	/** The same person with no more than a volunteer's roles. */
	Actor asVolunteer() {
		Map<String, Role> lower = new HashMap<>();
		this.roles.keySet().forEach((county) -> lower.put(county, Role.VOLUNTEER));
		return new Actor(this.id, this.creditName, false, lower, true);
	}

	/** Whether they hold the role, or one that includes it, in the county. */
	public boolean is(Role role, String county) {
		Role held = this.roles.get(county);
		return held != null && held.includes(role);
	}

	/** Whether they hold the role, or one that includes it, in any county. */
	public boolean isAnywhere(Role role) {
		return (role == Role.ADMINISTRATOR) ? this.administrator
				: this.roles.values().stream().anyMatch((held) -> held.includes(role));
	}

	/**
	 * Whether this is the name by which they are credited, without what people write now
	 * so, now otherwise: case, accents, points and spaces.
	 */
	public boolean isCalled(@Nullable String name) {
		return name != null && !folded(name).isEmpty() && folded(name).equals(folded(this.creditName));
	}

	private static String folded(String name) {
		return Normalizer.normalize(name, Normalizer.Form.NFKD)
			.toLowerCase(Locale.ROOT)
			.replaceAll("[^\\p{L}\\p{N}]", "");
	}

	public boolean isVolunteerIn(String county) {
		return is(Role.VOLUNTEER, county);
	}

	public boolean isVerifierIn(String county) {
		return is(Role.VERIFIER, county);
	}

	public boolean isCoordinatorOf(String county) {
		return is(Role.COORDINATOR, county);
	}

}

package county.bigtree.registry.pages;

import java.util.List;
import java.util.UUID;

import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.Role;

/**
 * Whoever is signed in, as far as pages ask: what to offer them. What they may do is
 * judged where they do it.
 *
 * @param id theirs
 * @param name by which they are credited
 * @param files whether they hold a role in a county
 * @param verified the counties in which they verify or coordinate, in order
 * @param coordinates the counties they coordinate, in order
 * @param administers whether they run the service
 */
public record Viewer(UUID id, String name, boolean files, List<String> verified, List<String> coordinates,
		boolean administers) {

	static Viewer of(Actor actor) {
		List<String> coordinates = actor.roles().keySet().stream().filter(actor::isCoordinatorOf).sorted().toList();
		List<String> verified = actor.roles().keySet().stream().filter(actor::isVerifierIn).sorted().toList();
		return new Viewer(actor.id(), actor.creditName(), actor.isAnywhere(Role.VOLUNTEER), verified, coordinates,
				actor.administrator());
	}

	/** Whether they verify somewhere. */
	public boolean verifies() {
		return !this.verified.isEmpty();
	}

	public boolean verifiesIn(String county) {
		return this.verified.contains(county);
	}

	/** Whether the desk has anything for them. */
	public boolean hasDesk() {
		return this.administers || !this.coordinates.isEmpty();
	}

}

package county.bigtree.registry.pages;

import java.util.List;

import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.Role;

/**
 * Whoever is signed in, as far as pages ask: what to offer them. What they may do is
 * judged where they do it.
 *
 * @param name by which they are credited
 * @param files whether they hold a role in a county
 * @param verifies whether they verify somewhere
 * @param coordinates the counties they coordinate, in order
 * @param administers whether they run the service
 */
public record Viewer(String name, boolean files, boolean verifies, List<String> coordinates, boolean administers) {

	static Viewer of(Actor actor) {
		List<String> coordinates = actor.roles().keySet().stream().filter(actor::isCoordinatorOf).sorted().toList();
		return new Viewer(actor.creditName(), actor.isAnywhere(Role.VOLUNTEER), actor.isAnywhere(Role.VERIFIER),
				coordinates, actor.administrator());
	}

	/** Whether the desk has anything for them. */
	public boolean hasDesk() {
		return this.administers || !this.coordinates.isEmpty();
	}

}

package county.bigtree.registry.story;

import java.util.Arrays;
import java.util.UUID;
import java.util.stream.Collectors;

import county.bigtree.registry.people.Actor;
import county.bigtree.registry.people.Role;
import org.jspecify.annotations.Nullable;

/**
 * To whom a story is told. A verifier of a county also sees what is not public there:
 * reasons in words, and what has not been decided or has come to nothing. Everybody sees
 * what they recorded themselves.
 *
 * @param person the asker, or null for the public
 * @param insideOf the counties of which the asker is a verifier, by key, with commas
 * between
 */
record Asker(@Nullable UUID person, String insideOf) {

	/** Whether the asker is a verifier of the county. */
	boolean isInside(String county) {
		return Arrays.asList(this.insideOf.split(",")).contains(county);
	}

	static Asker of(@Nullable Actor actor) {
		return (actor == null) ? new Asker(null, "")
				: new Asker(actor.id(),
						actor.roles()
							.keySet()
							.stream()
							.filter((county) -> actor.is(Role.VERIFIER, county))
							.sorted()
							.collect(Collectors.joining(",")));
	}

}

package county.bigtree.registry.demo;

import county.bigtree.registry.people.Actor;
import tools.jackson.databind.JsonNode;

/**
 * Does some of the actions of the demo's story, each through the use case that a request
 * would reach.
 */
interface DemoPart {

	/**
	 * Does the action and answers true, or answers false where it is none of this part's.
	 */
	boolean act(DemoStory story, JsonNode action, Actor actor);

}

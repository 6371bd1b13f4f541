package county.bigtree.registry.http;

import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * Tells what the present transaction has changed so far, for dry runs.
 */
public interface Effects {

	/**
	 * Begins to listen to the present transaction.
	 */
	void listen();

	/**
	 * Stops listening, and answers what was changed since, as a body of JSON.
	 * @param answer what the request would have been answered; null where it failed
	 */
	Object heard(@Nullable JsonNode answer);

	/**
	 * The type of what is heard, for the description of the API.
	 */
	Class<?> form();

}

package county.bigtree.registry.http;

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
	 */
	Object heard();

	/**
	 * The type of what is heard, for the description of the API.
	 */
	Class<?> form();

}

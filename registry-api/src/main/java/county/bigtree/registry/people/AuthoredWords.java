package county.bigtree.registry.people;

import java.util.UUID;

/**
 * The words that people wrote into the register, or the photos that they sent.
 */
public interface AuthoredWords {

	/**
	 * Erases all that someone wrote or sent, for good, in the transaction of whoever
	 * decided it.
	 * @param ground a code: asked-by-author, by-administrator
	 */
	void erase(UUID author, UUID by, String ground);

}

package county.bigtree.registry.species;

/**
 * No species in the catalogue has this key.
 */
public class UnknownSpecies extends RuntimeException {

	private final String key;

	UnknownSpecies(String key) {
		super("no species has the key " + key);
		this.key = key;
	}

	public String key() {
		return this.key;
	}

}

package county.bigtree.registry.species;

/**
 * What a name found in a file or written by a person leads to.
 */
public sealed interface NameMatch {

	/** The name is that of one species. */
	record Matched(Species species) implements NameMatch {
	}

	/** The name says no more than the genus. */
	record GenusOnly(Species genus) implements NameMatch {
	}

	/** No species bears the name, or several do. */
	record Unknown(String name) implements NameMatch {
	}

	static NameMatch of(Species species) {
		return species.genusOnly() ? new GenusOnly(species) : new Matched(species);
	}

}

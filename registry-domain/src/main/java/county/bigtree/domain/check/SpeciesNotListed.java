package county.bigtree.domain.check;

import java.util.Optional;

/**
 * A tree of a species that holds no titles in the county.
 */
final class SpeciesNotListed implements Check {

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		if (known.rules().speciesEligible()) {
			return Optional.empty();
		}
		String species = (filed.species() != null) ? filed.species() : "This species";
		return Optional.of(Finding.question("species-not-eligible",
				"%s is not on this county's list of species: the tree can be filed and is ranked, but it will hold no title. File it all the same?"
					.formatted(species),
				new Finding.Numbers()));
	}

}

package county.bigtree.registry.county;

import java.util.Optional;

import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.species.SpeciesCatalogue;

import org.springframework.stereotype.Component;

/**
 * Looks at the species that a rulebook lists: each is known, and is one of its own.
 */
@Component
class ListedSpecies {

	private final SpeciesCatalogue species;

	ListedSpecies(SpeciesCatalogue species) {
		this.species = species;
	}

	/**
	 * @throws Problem naming the first key that leads to no book of its own
	 */
	void require(Rulebook rulebook, String pointer) {
		if (rulebook.eligibleSpecies() != null) {
			rulebook.eligibleSpecies().stream().sorted().forEach((key) -> require(key, pointer + "/eligibleSpecies"));
		}
	}

	private void require(String key, String pointer) {
		if (this.species.find(key).isEmpty()) {
			throw Problem.invalid(pointer, "unknown",
					"no species has the key %s: search for it by name".formatted(key));
		}
		Optional<String> into = this.species.foldedInto(key);
		if (into.isPresent()) {
			throw Problem.invalid(pointer, "folded",
					"%s is part of %s, as which its trees are ranked: list that".formatted(key, into.get()));
		}
	}

}

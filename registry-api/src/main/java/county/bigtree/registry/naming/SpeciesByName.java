package county.bigtree.registry.naming;

import java.util.List;

import county.bigtree.registry.species.NameMatch;
import county.bigtree.registry.species.Species;
import county.bigtree.registry.species.SpeciesCatalogue;

import org.springframework.stereotype.Component;

/**
 * Finds the species that somebody means who types a name of any kind, or a key.
 */
@Component
public class SpeciesByName {

	private static final int OFFERED = 6;

	private final SpeciesCatalogue catalogue;

	SpeciesByName(SpeciesCatalogue catalogue) {
		this.catalogue = catalogue;
	}

	/** The one that goes by the name; else those that may be meant, or none. */
	public List<Species> find(String name) {
		Species byKey = this.catalogue.find(name).orElse(null);
		if (byKey != null) {
			return List.of(byKey);
		}
		return (this.catalogue.match(name) instanceof NameMatch.Matched matched) ? List.of(matched.species())
				: this.catalogue.search(name, null, 0, OFFERED);
	}

}

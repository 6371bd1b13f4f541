package county.bigtree.registry.naming;

import county.bigtree.registry.county.ReadCounties;
import county.bigtree.registry.species.SpeciesCatalogue;

import org.springframework.stereotype.Component;

/**
 * Gives the names for a page or an account in the making.
 */
@Component
public class Naming {

	private final SpeciesCatalogue species;

	private final ReadCounties counties;

	Naming(SpeciesCatalogue species, ReadCounties counties) {
		this.species = species;
		this.counties = counties;
	}

	public Names begin() {
		return new Names(this.species, this.counties);
	}

}

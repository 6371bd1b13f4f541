package county.bigtree.registry.check;

import java.util.UUID;

import county.bigtree.domain.place.Position;
import org.jspecify.annotations.Nullable;

/**
 * The tree of which something is filed, as it stands on the books within the change.
 *
 * @param county in which it stands
 * @param species its key
 * @param rankedAs the species as which it is ranked
 * @param scientificName that of its species
 * @param isNew whether nothing was measured of it before
 * @param practice whether its county is for practice
 * @param eligible whether it may be ranked, as ruled last
 * @param boundary of the county in which it stands, as GeoJSON, or null
 */
record FiledTree(UUID id, String county, String species, String rankedAs, String scientificName, double latitude,
		double longitude, double accuracyMetres, boolean isNew, boolean practice, @Nullable String boundary,
		boolean eligible) {

	Position position() {
		return new Position(this.latitude, this.longitude, this.accuracyMetres);
	}

}

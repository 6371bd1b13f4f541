package county.bigtree.domain.check;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

import org.jspecify.annotations.Nullable;

/**
 * How fast stems thicken at most, in inches of ring width a year: half of the growth in
 * diameter of vigorous planted trees. Groups and species ({@code growth-groups.csv}):
 * Burns and Honkala 1990, Silvics of North America, USDA Forest Service Agriculture
 * Handbook 654, from memory; half an inch of diameter a year for yellow-poplar is also in
 * the Forest Service's leaflet on it. A species in no group is taken as very fast. Of
 * forests: in cities half of the trees grow faster ({@link Thresholds#RING_INCHES}), so
 * it is used only where a second figure is at hand, that of a verifier.
 */
enum GrowthGroup {

	SLOW(0.15),

	MODERATE(0.20),

	FAST(0.375),

	VERY_FAST(0.5);

	private static final Map<String, GrowthGroup> GROUPS = read();

	private final double ringInches;

	GrowthGroup(double ringInches) {
		this.ringInches = ringInches;
	}

	double ringInches() {
		return this.ringInches;
	}

	/** By the scientific name; as very fast where there is none. */
	static GrowthGroup of(@Nullable String scientificName) {
		return (scientificName != null) ? of(TreeName.of(scientificName)) : VERY_FAST;
	}

	static GrowthGroup of(TreeName name) {
		return GROUPS.getOrDefault(name.species(), GROUPS.getOrDefault(name.genus(), VERY_FAST));
	}

	private static Map<String, GrowthGroup> read() {
		Map<String, GrowthGroup> groups = new HashMap<>();
		ReferenceTable.rows("growth-groups.csv")
			.forEach((row) -> groups.put(row.get(0), valueOf(row.get(1).toUpperCase(Locale.ROOT).replace('-', '_'))));
		return Map.copyOf(groups);
	}

}

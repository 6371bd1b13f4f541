package county.bigtree.domain.check;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The largest heights and diameters that silvics texts give for species of eastern North
 * America ({@code species-limits.csv}): Burns and Honkala 1990, Silvics of North America,
 * USDA Forest Service Agriculture Handbook 654, rounded and from memory, not looked up.
 * Each row says so, and has beside it the largest measured in eight cities (McPherson,
 * van Doorn and Peper 2016, Urban tree database, RDS-2016-0005), which none falls below.
 */
final class SpeciesLimits {

	private static final Map<String, Limit> LIMITS = read();

	private SpeciesLimits() {
	}

	static Optional<Limit> of(TreeName name) {
		return Optional.ofNullable(LIMITS.get(name.species()));
	}

	private static Map<String, Limit> read() {
		Map<String, Limit> limits = new HashMap<>();
		ReferenceTable.rows("species-limits.csv")
			.forEach((row) -> limits.put(row.get(0),
					new Limit(Double.parseDouble(row.get(1)), Double.parseDouble(row.get(2)))));
		return Map.copyOf(limits);
	}

	/**
	 * The largest of a species.
	 */
	record Limit(double heightFeet, double diameterInches) {
	}

}

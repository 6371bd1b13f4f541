package county.bigtree.domain.rulebook;

/**
 * What a measurement that has grown too old does to a title.
 */
public enum WhenStale {

	/**
	 * A stale tree may hold a title until a current tree has more points, or until it has
	 * not been seen standing for the rulebook's sighting years.
	 */
	KEEPS,

	/**
	 * Where a stale tree has the most points nobody holds the title until it is
	 * remeasured or beaten.
	 */
	VACANT,

	/**
	 * The best current tree takes the title, whatever its rank.
	 */
	PASSES

}

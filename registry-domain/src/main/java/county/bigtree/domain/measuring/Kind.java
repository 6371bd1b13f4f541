package county.bigtree.domain.measuring;

/**
 * What a reading is of. Each kind is reduced to one figure in one unit.
 */
public enum Kind {

	/** Around the stem, in inches. */
	GIRTH,

	/** Total height, in feet. */
	HEIGHT,

	/** Mean crown spread, in feet. */
	CROWN

}

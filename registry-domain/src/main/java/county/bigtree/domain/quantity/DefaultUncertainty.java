package county.bigtree.domain.quantity;

/**
 * The standard uncertainty of a length for which the measurer states none: what the
 * instrument is worth in that use.
 */
@FunctionalInterface
public interface DefaultUncertainty {

	/** In inches, for a length of so many inches. */
	double inches(double lengthInches);

}

package county.bigtree.registry.http;

/**
 * A body whose ETag begins with its revision: {@code "<revision>-<hash>"}. A decision on
 * it is judged by the revision alone.
 */
public interface Revisioned {

	/** Raised by facts of this resource only. */
	long revision();

}

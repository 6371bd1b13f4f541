package county.bigtree.registry.archive;

/**
 * Hears how far the writing or reading of an archive is.
 */
@FunctionalInterface
public interface ArchiveProgress {

	/**
	 * So many of something are done, of how many.
	 */
	void at(String what, long done, long of);

}

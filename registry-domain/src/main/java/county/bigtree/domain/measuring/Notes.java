package county.bigtree.domain.measuring;

import org.jspecify.annotations.Nullable;

/**
 * What every reading may say beside its figures.
 *
 * @param instrument in the measurer's words, or null
 * @param remarks or null
 */
public record Notes(@Nullable String instrument, @Nullable String remarks) {

	/** Nothing said. */
	public static final Notes NONE = new Notes(null, null);

}

package county.bigtree.domain.check;

import county.bigtree.domain.quantity.Figures;
import org.jspecify.annotations.Nullable;

/**
 * A tree of the same species near the filed one, as shown to whoever files.
 *
 * @param tag of the tree; null where whoever files may only learn that it may be there
 * @param waiting whether its nomination is not decided yet; told only with the tag
 * @param metres between its place and the filed one, 0 or more
 * @param jointAccuracyMetres the root of the sum of both accuracies squared, more than
 * zero
 * @param girthInches latest on the books, or as filed
 */
public record Neighbour(@Nullable String tag, boolean waiting, double metres, double jointAccuracyMetres,
		@Nullable Double girthInches) {

	public Neighbour {
		Figures.notNegative("metres", metres);
		Figures.positive("jointAccuracyMetres", jointAccuracyMetres);
	}

}

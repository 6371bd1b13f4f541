package county.bigtree.domain.check;

import county.bigtree.domain.quantity.Figures;
import org.jspecify.annotations.Nullable;

/**
 * A tree of the same species on the books, as shown to whoever files.
 *
 * @param tag of the tree
 * @param metres between its place and the filed one, 0 or more
 * @param jointAccuracyMetres the root of the sum of both accuracies squared, more than
 * zero
 * @param girthInches latest on the books
 */
public record Neighbour(String tag, double metres, double jointAccuracyMetres, @Nullable Double girthInches) {

	public Neighbour {
		Figures.notNegative("metres", metres);
		Figures.positive("jointAccuracyMetres", jointAccuracyMetres);
	}

}

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

	/**
	 * Whether it is likely the tree of that girth: it stands within the joint accuracy of
	 * both places, and where that is rough the girths are alike too.
	 * @param inches null where the girth is not known
	 */
	public boolean mayBeOneOf(@Nullable Double inches) {
		return this.metres <= this.jointAccuracyMetres
				&& (this.jointAccuracyMetres <= Thresholds.WELL_PLACED || isAlike(inches));
	}

	private boolean isAlike(@Nullable Double inches) {
		Double own = this.girthInches;
		return inches != null && own != null && Math.abs(inches - own) <= Thresholds.SAME_GIRTH * Math.max(inches, own);
	}

}

package county.bigtree.domain.measuring;

import java.util.List;
import java.util.Optional;

import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Length;
import org.jspecify.annotations.Nullable;

/**
 * What a girth reading may say beside its figures.
 *
 * @param heightAboveGround where the girth was taken, if it was noted; more than zero
 * @param breastHeightFrom from which ground that height was taken on a slope, if it was
 * noted
 * @param placement why it was taken there (a burl, a fork, a low limb), or null
 * @param instrument in the measurer's words, or null
 * @param remarks or null
 */
public record GirthNotes(@Nullable Length heightAboveGround, @Nullable SlopeRule breastHeightFrom,
		@Nullable String placement, @Nullable String instrument, @Nullable String remarks) {

	/** Nothing said. */
	public static final GirthNotes NONE = new GirthNotes(null, null, null, null, null);

	/** In feet: what separates 4.5 ft from 1.37 m, with room for a rounded entry. */
	private static final double SAME_HEIGHT = 0.05;

	/** In metres (Luoma and others 2017, Forests 8(2):38). */
	private static final double METRIC_BREAST_HEIGHT = 1.3;

	private static final double SAME_METRIC_HEIGHT = 0.01;

	public GirthNotes {
		if (heightAboveGround != null) {
			heightAboveGround.positive("heightAboveGround");
		}
	}

	List<Caution> cautions() {
		return offBreastHeight().stream().toList();
	}

	/**
	 * What there is to say where the girth was taken at another height than breast
	 * height.
	 */
	public Optional<Caution> offBreastHeight() {
		Length height = this.heightAboveGround;
		if (height == null || Math.abs(height.feet() - MeasuringPoint.BREAST_HEIGHT_FEET) <= SAME_HEIGHT) {
			return Optional.empty();
		}
		if (Math.abs(height.metres() - METRIC_BREAST_HEIGHT) <= SAME_METRIC_HEIGHT) {
			return Optional.of(new Caution("metric-breast-height",
					"The girth was taken at 1.3 m, breast height in metric countries, which lies 0.23 ft below 4.5 ft: "
							+ "where the stem tapers it reads somewhat large."));
		}
		return Optional.of(new Caution("not-at-breast-height", "The girth was taken "
				+ Figures.rounded(height.feet(), 3) + " ft above ground, not at 4.5 ft (1.37 m)."));
	}

}

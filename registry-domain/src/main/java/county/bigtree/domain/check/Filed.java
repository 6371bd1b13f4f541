package county.bigtree.domain.check;

import java.time.LocalDate;

import county.bigtree.domain.measuring.HeightReading;
import county.bigtree.domain.place.Position;
import org.jspecify.annotations.Nullable;

/**
 * What the checks look at of a filing. Anything but the day of filing may be missing.
 *
 * @param species scientific name, of a genus alone too
 * @param sizes what was measured
 * @param heightReading how the height was taken
 * @param leans whether whoever measured calls the tree leaning
 * @param measuredOn the day of the visit
 * @param filedOn today, in the county
 * @param position where the base stands; also needed for the sun
 */
public record Filed(@Nullable String species, Sizes sizes, @Nullable HeightReading heightReading, boolean leans,
		@Nullable LocalDate measuredOn, LocalDate filedOn, @Nullable Position position) {

	/** Figures and a name alone, as the rows of a list have them. */
	public static Filed figures(@Nullable String species, Sizes sizes, LocalDate filedOn) {
		return new Filed(species, sizes, null, false, null, filedOn, null);
	}

}

package county.bigtree.domain.check;

import java.time.LocalDate;

import county.bigtree.domain.measuring.GirthNotes;
import county.bigtree.domain.measuring.HeightReading;
import county.bigtree.domain.measuring.Readings;
import county.bigtree.domain.place.Position;
import org.jspecify.annotations.Nullable;

/**
 * What the checks look at of a filing. Anything but the day of filing may be missing.
 *
 * @param species scientific name, of a genus alone too
 * @param sizes what was measured
 * @param readings how that was taken; null for figures alone, as a list has them
 * @param leans whether whoever measured calls the tree leaning
 * @param measuredOn the day of the visit
 * @param filedOn today, in the county
 * @param position where the base stands; also needed for the sun
 */
public record Filed(@Nullable String species, Sizes sizes, @Nullable Readings readings, boolean leans,
		@Nullable LocalDate measuredOn, LocalDate filedOn, @Nullable Position position) {

	/** Figures and a name alone, as the rows of a list have them. */
	public static Filed figures(@Nullable String species, Sizes sizes, LocalDate filedOn) {
		return new Filed(species, sizes, null, false, null, filedOn, null);
	}

	@Nullable HeightReading heightReading() {
		return (this.readings != null) ? this.readings.height() : null;
	}

	/** What was said of where the girth was taken. */
	GirthNotes girthNotes() {
		return (this.readings != null && this.readings.girth() != null) ? this.readings.girth().notes()
				: GirthNotes.NONE;
	}

}

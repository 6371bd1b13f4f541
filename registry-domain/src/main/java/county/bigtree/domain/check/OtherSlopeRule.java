package county.bigtree.domain.check;

import java.util.Optional;

import county.bigtree.domain.measuring.SlopeRule;

/**
 * Breast height taken from other ground than the county's rules say. On a stem of 4 ft
 * across and a slope of 30 percent the two points lie 0.6 ft apart.
 */
final class OtherSlopeRule implements Check {

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		SlopeRule taken = filed.girthNotes().breastHeightFrom();
		SlopeRule wanted = known.rules().slopeRule();
		if (taken == null || taken == wanted) {
			return Optional.empty();
		}
		return Optional.of(Finding.note("other-slope-rule",
				"The girth was taken 4.5 ft above the ground %s; by this county's rules it is taken 4.5 ft above the ground %s."
					.formatted(taken.where(), wanted.where()),
				new Finding.Numbers().with("takenFrom", taken.word()).with("countyRule", wanted.word())));
	}

}

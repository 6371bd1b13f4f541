package county.bigtree.registry.measuring.web;

import java.math.BigDecimal;
import java.util.List;

import county.bigtree.domain.measuring.CrownCover;
import county.bigtree.domain.measuring.CrownReading;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.registry.http.quantity.CautionJson;
import county.bigtree.registry.http.quantity.WorkingJson;
import org.jspecify.annotations.Nullable;

/**
 * What a crown reading comes to.
 *
 * @param value the mean spread in feet
 * @param shown the value and twice its standard uncertainty, in the digits that they
 * deserve
 * @param degreesOfFreedom of the uncertainty, where it rests on a few repeats; else null
 * @param studentFactor by which Student's t would have the standard uncertainty
 * multiplied for 95 %, in place of the 2 that is shown; null where nothing was repeated
 * @param cover the ground it covers, for information
 */
record CrownAnswer(BigDecimal value, BigDecimal standardUncertainty, String unit, String shown,
		@Nullable BigDecimal degreesOfFreedom, @Nullable BigDecimal studentFactor, CoverJson cover,
		List<WorkingJson> working, List<CautionJson> cautions) {

	static CrownAnswer of(CrownReading reading) {
		ReadingAnswer spread = ReadingAnswer.of(reading, "ft");
		return new CrownAnswer(spread.value(), spread.standardUncertainty(), spread.unit(), spread.shown(),
				spread.degreesOfFreedom(), spread.studentFactor(), CoverJson.of(CrownCover.of(reading)),
				spread.working(), spread.cautions());
	}

	/**
	 * The ground that a crown covers.
	 *
	 * @param areaPreservingSpread of the circle that covers as much; null where the
	 * readings tell no more than a mean
	 */
	record CoverJson(List<AreaJson> areas, @Nullable SpreadJson areaPreservingSpread) {

		private static CoverJson of(CrownCover cover) {
			Estimate spread = cover.areaPreservingSpread();
			return new CoverJson(cover.areas().stream().map(AreaJson::of).toList(),
					(spread != null) ? SpreadJson.of(spread) : null);
		}

	}

	/**
	 * An area by one form of the outline.
	 *
	 * @param form disc, ellipse, polygon or sectors
	 */
	record AreaJson(String form, BigDecimal squareFeet, BigDecimal standardUncertainty, String shown) {

		private static AreaJson of(CrownCover.Area area) {
			Estimate feet = area.squareFeet();
			return new AreaJson(area.form().code(), Rounded.hundredths(feet.value()),
					Rounded.hundredths(feet.standardUncertainty()), feet.shown("ft²"));
		}

	}

	/**
	 * A spread.
	 */
	record SpreadJson(BigDecimal feet, BigDecimal standardUncertainty, String shown) {

		private static SpreadJson of(Estimate spread) {
			return new SpreadJson(Rounded.hundredths(spread.value()), Rounded.hundredths(spread.standardUncertainty()),
					spread.shown("ft"));
		}

	}

}

package county.bigtree.registry.measuring.web;

import java.math.BigDecimal;
import java.util.List;

import county.bigtree.domain.measuring.Reading;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.registry.http.quantity.CautionJson;
import county.bigtree.registry.http.quantity.WorkingJson;
import org.jspecify.annotations.Nullable;

/**
 * What one reading comes to.
 *
 * @param shown the value and twice its standard uncertainty, in the digits that they
 * deserve
 * @param degreesOfFreedom of the uncertainty, where it rests on a few repeats; else null
 * @param studentFactor by which Student's t would have the standard uncertainty
 * multiplied for 95 %, in place of the 2 that is shown; null where nothing was repeated
 */
record ReadingAnswer(BigDecimal value, BigDecimal standardUncertainty, String unit, String shown,
		@Nullable BigDecimal degreesOfFreedom, @Nullable BigDecimal studentFactor, List<WorkingJson> working,
		List<CautionJson> cautions) {

	static ReadingAnswer of(Reading reading, String unit) {
		Estimate estimate = reading.estimate();
		FewRepeats repeats = FewRepeats.of(estimate.degreesOfFreedom());
		return new ReadingAnswer(Rounded.hundredths(estimate.value()),
				Rounded.hundredths(estimate.standardUncertainty()), unit, estimate.shown(unit),
				repeats.degreesOfFreedom(), repeats.studentFactor(), WorkingJson.of(reading.working()),
				CautionJson.of(reading.cautions()));
	}

}

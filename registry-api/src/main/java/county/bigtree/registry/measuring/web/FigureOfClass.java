package county.bigtree.registry.measuring.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;

import county.bigtree.domain.classroom.ClassComparison;
import county.bigtree.domain.classroom.GroupResult;
import county.bigtree.domain.classroom.LikelyReason;
import county.bigtree.domain.measuring.CrownReading;
import county.bigtree.domain.measuring.GirthReading;
import county.bigtree.domain.measuring.HeightReading;
import county.bigtree.domain.measuring.Kind;
import county.bigtree.domain.measuring.Reading;
import county.bigtree.registry.http.quantity.CautionJson;
import county.bigtree.registry.http.quantity.WorkingJson;
import org.jspecify.annotations.Nullable;

/**
 * One figure of a tree as a class found it.
 *
 * @param unit in for a girth, ft for a height or a spread
 * @param median of all groups
 * @param scatter robust standard deviation of the groups
 * @param mean of the groups that aren't off
 * @param meanStandardUncertainty from the scatter of those groups
 * @param least of all groups
 * @param most of all groups
 * @param off names of the groups that are off
 */
record FigureOfClass(String unit, BigDecimal median, BigDecimal scatter, BigDecimal mean,
		BigDecimal meanStandardUncertainty, BigDecimal least, BigDecimal most, List<String> off,
		List<GroupOfClass> groups, List<WorkingJson> working) {

	static FigureOfClass of(ClassComparison compared) {
		return new FigureOfClass((compared.kind() == Kind.GIRTH) ? "in" : "ft", hundredths(compared.median()),
				hundredths(compared.scatter()), hundredths(compared.mean().value()),
				hundredths(compared.mean().standardUncertainty()), hundredths(compared.least()),
				hundredths(compared.most()), compared.off(), compared.groups().stream().map(GroupOfClass::of).toList(),
				WorkingJson.of(compared.working()));
	}

	private static BigDecimal hundredths(double value) {
		return BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP);
	}

	/**
	 * One group's figure beside the reading that it comes from.
	 *
	 * @param offBy the figure less the median
	 * @param off whether it lies farther out than scatter and its own uncertainty explain
	 * @param reason the likeliest, where it is off and one fits
	 */
	record GroupOfClass(String group, @Nullable GirthReading girth, @Nullable HeightReading height,
			@Nullable CrownReading crown, BigDecimal value, BigDecimal standardUncertainty, BigDecimal offBy,
			boolean off, @Nullable ReasonOfClass reason, List<WorkingJson> working, List<CautionJson> cautions) {

		static GroupOfClass of(GroupResult result) {
			Reading reading = result.reading();
			LikelyReason reason = result.reason();
			return new GroupOfClass(result.group(), (reading instanceof GirthReading girth) ? girth : null,
					(reading instanceof HeightReading height) ? height : null,
					(reading instanceof CrownReading crown) ? crown : null, hundredths(result.estimate().value()),
					hundredths(result.estimate().standardUncertainty()), hundredths(result.offBy()), result.off(),
					(reason != null) ? new ReasonOfClass(reason.code(), reason.detail()) : null,
					WorkingJson.of(reading.working()), CautionJson.of(reading.cautions()));
		}

	}

	/** A guess to start the talk with. */
	record ReasonOfClass(String code, String detail) {
	}

}

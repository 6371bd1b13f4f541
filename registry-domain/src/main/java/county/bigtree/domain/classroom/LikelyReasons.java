package county.bigtree.domain.classroom;

import java.util.List;
import java.util.Optional;

import county.bigtree.domain.measuring.EqualArmHeight;
import county.bigtree.domain.measuring.Kind;
import county.bigtree.domain.measuring.Reading;
import county.bigtree.domain.measuring.StringGirth;
import county.bigtree.domain.measuring.TangentHeight;
import county.bigtree.domain.measuring.TapeGirth;
import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.InvalidReadingException;

/**
 * Finds the likeliest reason why a figure is off, each by a rule of its own, the surest
 * first. The limits are proposals: no source.
 */
final class LikelyReasons {

	private static final double LEAST_EYE_HEIGHT = 3;

	private static final double MOST_EYE_HEIGHT = 7;

	private static final double MOST_SLACK = 0.12;

	private static final List<Rule> RULES = List.of(LikelyReasons::unitSlip, LikelyReasons::baseSign,
			LikelyReasons::eyeHeight, LikelyReasons::slack, LikelyReasons::tooClose);

	private LikelyReasons() {
	}

	/** Empty where no rule fits. */
	static Optional<LikelyReason> find(Reading reading, Estimate figure, Yardstick yardstick) {
		return RULES.stream()
			.map((rule) -> rule.explain(reading, figure, yardstick))
			.flatMap(Optional::stream)
			.findFirst();
	}

	private static Optional<LikelyReason> unitSlip(Reading reading, Estimate figure, Yardstick yardstick) {
		return UnitConfusion.of(reading.method().kind(), figure, yardstick);
	}

	/** Turned about, the angle to the base gives the height of the class. */
	private static Optional<LikelyReason> baseSign(Reading reading, Estimate figure, Yardstick yardstick) {
		if (!(reading instanceof TangentHeight tangent)) {
			return Optional.empty();
		}
		Angle base = tangent.baseAngle();
		Angle turned = new Angle(-base.value(), base.unit(), base.standardUncertainty());
		try {
			TangentHeight other = new TangentHeight(tangent.horizontalDistance(), tangent.slopeDistance(),
					tangent.slopeAngle(), tangent.lineToBase(), tangent.topAngle(), turned, tangent.topOffset(),
					tangent.markAboveBase(), tangent.notes());
			return yardstick.isOff(other.estimate()) ? Optional.empty() : reason("wrong-base",
					"With the sign of the angle to the base turned about it agrees with the class: a base below "
							+ "the eye is negative, one above it positive.");
		}
		catch (InvalidReadingException ex) {
			return Optional.empty();
		}
	}

	/** Low by about as much as an eye stands above the ground. */
	private static Optional<LikelyReason> eyeHeight(Reading reading, Estimate figure, Yardstick yardstick) {
		double missing = yardstick.median() - figure.value();
		boolean fromEye = reading instanceof TangentHeight tangent && tangent.baseAngle().value() == 0
				|| reading instanceof EqualArmHeight arm && arm.baseOffset() == null;
		if (!fromEye || missing < LEAST_EYE_HEIGHT || missing > MOST_EYE_HEIGHT) {
			return Optional.empty();
		}
		return reason("wrong-base", "It is low by %s ft, about the height of an eye: the part below the eye is missing."
			.formatted(Figures.rounded(missing, 2)));
	}

	/** Strings and tapes that hang or climb read too much, never too little. */
	private static Optional<LikelyReason> slack(Reading reading, Estimate figure, Yardstick yardstick) {
		double excess = yardstick.ratio(figure) - 1;
		if (excess <= 0 || excess > MOST_SLACK) {
			return Optional.empty();
		}
		String percent = Figures.rounded(100 * excess, 2);
		if (reading instanceof StringGirth) {
			return reason("slack-string",
					"It is %s %% more than the class found: the string hung slack or ran up and down."
						.formatted(percent));
		}
		return (reading instanceof TapeGirth) ? reason("slack-tape",
				"It is %s %% more than the class found: the tape sagged, or lay over bark or vines.".formatted(percent))
				: Optional.empty();
	}

	private static Optional<LikelyReason> tooClose(Reading reading, Estimate figure, Yardstick yardstick) {
		boolean close = reading.method().kind() == Kind.HEIGHT && figure.value() > yardstick.median()
				&& reading.cautions().stream().anyMatch((caution) -> "too-close".equals(caution.code()));
		return close ? reason("too-close",
				"It was taken from closer than seven tenths of the height and reads high: a limb was taken for the top.")
				: Optional.empty();
	}

	private static Optional<LikelyReason> reason(String code, String detail) {
		return Optional.of(new LikelyReason(code, detail));
	}

	/** One way in which a reading goes wrong. */
	private interface Rule {

		Optional<LikelyReason> explain(Reading reading, Estimate figure, Yardstick yardstick);

	}

}

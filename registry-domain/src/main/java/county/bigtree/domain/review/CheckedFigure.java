package county.bigtree.domain.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

import county.bigtree.domain.measuring.Combination;
import county.bigtree.domain.measuring.Kind;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;
import org.jspecify.annotations.Nullable;

/**
 * One figure as filed and as checked, judged by three tests once growth between the
 * visits is allowed for: the tolerance, the E_n score (see {@link EnScore}) and, for what
 * it tells, the limit of repeatability. They agree where tolerance and score agree,
 * disagree where both fail, and want another look where the two tests differ (proposal).
 * Without an uncertainty on either side the tolerance decides alone.
 *
 * @param kind girth in inches, the others in feet
 * @param tolerance how far apart they may lie, inclusive, 0 or more
 * @param growth by which the checked figure may exceed the filed one
 */
public record CheckedFigure(Kind kind, Estimate filed, Estimate checked, double tolerance, GrowthWindow growth) {

	/** What binary fractions may add to a difference that lies exactly on the line. */
	private static final double NOISE = 1e-9;

	public CheckedFigure {
		Figures.notNegative("tolerance", tolerance);
	}

	/** By the rulebook's tolerances. */
	public static CheckedFigure of(Kind kind, Estimate filed, Estimate checked, Tolerances tolerances,
			GrowthWindow growth) {
		double tolerance = switch (kind) {
			case GIRTH -> tolerances.girthInches(checked.value());
			case HEIGHT -> tolerances.heightFeet(checked.value());
			case CROWN -> tolerances.spreadFeet(checked.value());
		};
		return new CheckedFigure(kind, filed, checked, tolerance, growth);
	}

	/** Checked less filed. */
	public double difference() {
		return this.checked.value() - this.filed.value();
	}

	/** What growth between the visits doesn't explain of the difference. */
	public double unexplained() {
		return this.growth.unexplained(difference());
	}

	public boolean withinTolerance() {
		return Math.abs(unexplained()) <= this.tolerance + NOISE;
	}

	/** Of what is unexplained, or null where a side has no uncertainty. */
	public @Nullable Double enScore() {
		if (this.filed.standardUncertainty() == 0 || this.checked.standardUncertainty() == 0) {
			return null;
		}
		return unexplained() / Math.hypot(this.filed.expanded(), this.checked.expanded());
	}

	/** Or null where none is published. */
	public @Nullable Double repeatabilityLimit() {
		return RepeatabilityLimit.of(this.kind, this.checked.value());
	}

	public Agreed verdict() {
		Double score = enScore();
		if (score == null || (Math.abs(score) <= 1) == withinTolerance()) {
			return withinTolerance() ? Agreed.AGREES : Agreed.DISAGREES;
		}
		return Agreed.LOOK_AGAIN;
	}

	/**
	 * Both put together by their uncertainties, for information, or null: only figures
	 * that agree and of about one time are of one quantity.
	 */
	public @Nullable Combination combined() {
		return (verdict() != Agreed.AGREES || enScore() == null || !this.growth.equals(GrowthWindow.NONE)) ? null
				: Combination.of(List.of(this.filed, this.checked));
	}

	/** The verdict in a sentence that a volunteer understands. */
	public String sentence() {
		String both = "The filed %s of %s and the checked one of %s ".formatted(name(), shown(this.filed.value()),
				shown(this.checked.value()));
		return both + switch (verdict()) {
			case AGREES -> "agree.";
			case DISAGREES -> "do not agree.";
			case LOOK_AGAIN -> withinTolerance()
					? "are within the tolerance, but farther apart than their uncertainties let one expect: look again."
					: "are no farther apart than their uncertainties let one expect, but beyond the tolerance: look again.";
		};
	}

	/** Why a filed figure can't be confirmed, with the numbers. */
	String outsideTolerance() {
		String grown = (this.growth.equals(GrowthWindow.NONE)) ? ""
				: ", of which growth between the visits explains all but " + shown(Math.abs(unexplained()));
		return "The filed %s of %s differs from yours of %s by %s%s: more than %s.".formatted(name(),
				shown(this.filed.value()), shown(this.checked.value()), shown(Math.abs(difference())), grown,
				shown(this.tolerance));
	}

	/** A sentence for each test, with its numbers. */
	public List<String> reasons() {
		List<String> reasons = new ArrayList<>();
		if (unexplained() != difference()) {
			reasons.add("Of a difference of %s, growth between the visits explains all but %s."
				.formatted(shown(difference()), shown(unexplained())));
		}
		reasons.add("The difference of %s is %s the tolerance of %s.".formatted(shown(unexplained()),
				withinTolerance() ? "within" : "beyond", shown(this.tolerance)));
		reasons.add(scoreReason(enScore()));
		Double limit = repeatabilityLimit();
		if (limit != null) {
			reasons.add("Two practised measurers differ by more than %s once in twenty times.".formatted(shown(limit)));
		}
		return reasons;
	}

	private String scoreReason(@Nullable Double score) {
		if (score == null) {
			return "One side has no uncertainty, so that the tolerance decides alone.";
		}
		return "The difference is %s times what both uncertainties allow (E_n); they %s.".formatted(
				Figures.rounded(Math.abs(score), 3), (Math.abs(score) <= 1) ? "agree up to 1" : "disagree above 1");
	}

	private String name() {
		return (this.kind == Kind.CROWN) ? "crown spread" : this.kind.name().toLowerCase(Locale.ROOT);
	}

	private String shown(double value) {
		return Figures.rounded(value, 4) + ((this.kind == Kind.GIRTH) ? " in" : " ft");
	}

}

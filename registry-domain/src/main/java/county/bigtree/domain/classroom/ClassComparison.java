package county.bigtree.domain.classroom;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

import county.bigtree.domain.measuring.Kind;
import county.bigtree.domain.measuring.WorkingLine;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;

/**
 * The readings of one figure of one tree by several groups, held against each other. The
 * middle is the median; the scatter is 1.4826 times the median distance from it, which is
 * the standard deviation of normal readings (Hampel 1974, Journal of the American
 * Statistical Association 69:383-393, from memory), and not less than the median of the
 * groups' own uncertainties. A group is off when it lies farther from the median than
 * three times the scatter and than twice its own standard uncertainty. The robust mean is
 * the mean of the others. With two groups nobody can tell which is off.
 *
 * @param kind girth in inches, the others in feet
 * @param median of all groups
 * @param scatter as above
 * @param mean of the groups that aren't off, with the standard error of the mean and its
 * degrees of freedom
 * @param least of all groups
 * @param most of all groups
 * @param groups in the order given
 * @param working how median, scatter and mean were found
 */
public record ClassComparison(Kind kind, double median, double scatter, Estimate mean, double least, double most,
		List<GroupResult> groups, List<WorkingLine> working) {

	private static final int MOST_GROUPS = 100;

	private static final double NORMAL = 1.4826;

	private static final double REACH = 3;

	public ClassComparison {
		groups = List.copyOf(groups);
		working = List.copyOf(working);
	}

	/**
	 * Compares.
	 * @throws InvalidReadingException unless there are two or more readings, all of one
	 * kind, each of which comes to a figure
	 */
	public static ClassComparison of(List<GroupReading> readings) {
		Kind kind = check(readings);
		Estimate[] figures = figures(readings);
		double[] values = Arrays.stream(figures).mapToDouble(Estimate::value).toArray();
		double median = median(values);
		double deviation = median(Arrays.stream(values).map((value) -> Math.abs(value - median)).toArray());
		double own = median(Arrays.stream(figures).mapToDouble(Estimate::standardUncertainty).toArray());
		double scatter = Math.max(NORMAL * deviation, own);
		Yardstick yardstick = new Yardstick(median, REACH * scatter);
		List<GroupResult> groups = new ArrayList<>();
		for (int i = 0; i < figures.length; i++) {
			groups.add(result(readings.get(i), figures[i], yardstick));
		}
		double[] kept = groups.stream()
			.filter((group) -> !group.off())
			.mapToDouble((g) -> g.estimate().value())
			.toArray();
		Estimate mean = mean(kept, own);
		List<WorkingLine> working = new ClassWorking((kind == Kind.GIRTH) ? "in" : "ft").lines(values, median,
				deviation, own, scatter, kept, mean);
		return new ClassComparison(kind, median, scatter, mean, Arrays.stream(values).min().orElseThrow(),
				Arrays.stream(values).max().orElseThrow(), groups, working);
	}

	/** Names of the groups that are off. */
	public List<String> off() {
		return this.groups.stream().filter(GroupResult::off).map(GroupResult::group).collect(Collectors.toList());
	}

	private static Kind check(List<GroupReading> readings) {
		if (readings.size() < 2 || readings.size() > MOST_GROUPS) {
			throw new InvalidReadingException("groups", Flaw.WRONG_COUNT,
					"must be from 2 to " + MOST_GROUPS + " but was " + readings.size());
		}
		Kind kind = readings.get(0).reading().method().kind();
		for (int i = 1; i < readings.size(); i++) {
			if (readings.get(i).reading().method().kind() != kind) {
				throw new InvalidReadingException("groups/" + i, Flaw.CONTRADICTION,
						"must be of the same figure as the first");
			}
		}
		return kind;
	}

	private static Estimate[] figures(List<GroupReading> readings) {
		Estimate[] figures = new Estimate[readings.size()];
		for (int i = 0; i < figures.length; i++) {
			try {
				figures[i] = readings.get(i).reading().estimate();
			}
			catch (InvalidReadingException ex) {
				throw ex.within("groups/" + i);
			}
		}
		return figures;
	}

	private static GroupResult result(GroupReading group, Estimate figure, Yardstick yardstick) {
		boolean off = yardstick.isOff(figure);
		LikelyReason reason = off ? LikelyReasons.find(group.reading(), figure, yardstick).orElse(null) : null;
		return new GroupResult(group.group(), group.reading(), figure, figure.value() - yardstick.median(), off,
				reason);
	}

	private static double median(double[] values) {
		double[] sorted = values.clone();
		Arrays.sort(sorted);
		int n = sorted.length;
		return (n % 2 == 1) ? sorted[n / 2] : (sorted[n / 2 - 1] + sorted[n / 2]) / 2;
	}

	/**
	 * Of one group alone there is no scatter: its like is as unsure as the readings are.
	 */
	private static Estimate mean(double[] kept, double own) {
		int n = kept.length;
		double mean = Arrays.stream(kept).average().orElseThrow();
		if (n == 1) {
			return new Estimate(mean, own);
		}
		double squares = Arrays.stream(kept).map((value) -> (value - mean) * (value - mean)).sum();
		return new Estimate(mean, Math.sqrt(squares / (n - 1) / n), n - 1);
	}

	/** The lines of arithmetic. */
	private record ClassWorking(String unit) {

		List<WorkingLine> lines(double[] values, double median, double deviation, double own, double scatter,
				double[] kept, Estimate mean) {
			int n = kept.length;
			return List.of(
					new WorkingLine("M = median(x1, ..., xn)", "median(" + list(values, ", ") + ")", median, this.unit),
					new WorkingLine("D = median(|xi - M|)", distances(values, median), deviation, this.unit),
					new WorkingLine("s = max(1.4826 D, median(u1, ..., un))",
							"max(1.4826 × %s, %s)".formatted(shown(deviation), shown(own)), scatter, this.unit),
					new WorkingLine("off: |xi - M| > 3 s", "3 × " + shown(scatter), REACH * scatter, this.unit),
					new WorkingLine("mean of those not off", "(" + list(kept, " + ") + ") / " + n, mean.value(),
							this.unit),
					new WorkingLine("u(mean) = √(Σ (xi - mean)² / (n - 1) / n)", n + " groups",
							mean.standardUncertainty(), this.unit));
		}

		private static String distances(double[] values, double median) {
			double[] distances = Arrays.stream(values).map((value) -> Math.abs(value - median)).toArray();
			return "median(" + list(distances, ", ") + ")";
		}

		private static String list(double[] values, String between) {
			return Arrays.stream(values).mapToObj(ClassWorking::shown).collect(Collectors.joining(between));
		}

		private static String shown(double value) {
			return Figures.rounded(value, 5);
		}

	}

}

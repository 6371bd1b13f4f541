package county.bigtree.domain.measuring;

import java.util.List;
import java.util.stream.Collectors;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;

/**
 * Several measurements of one figure of one tree at about one time, put together: their
 * mean, weighted by the inverse squares of their standard uncertainties. Where they
 * scatter more than those allow the uncertainty is widened by the Birge ratio, √(χ² / (n
 * - 1)) (Birge 1932, Physical Review 40:207-227, from memory). Only figures that
 * {@link #agree} should be used together.
 *
 * @param mean with the uncertainty of the mean, widened where need be
 * @param chiSquared of the measurements about the mean
 * @param birgeRatio 1 where they scatter no more than they should
 * @param agree whether no two lie farther apart than their expanded uncertainties
 * together
 */
public record Combination(Estimate mean, double chiSquared, double birgeRatio, boolean agree) {

	/** Of one or more measurements in one unit, each with an uncertainty above zero. */
	public static Combination of(List<Estimate> measurements) {
		Estimate mean = WeightedMean.of(measurements);
		double chiSquared = 0;
		for (Estimate each : measurements) {
			double off = (each.value() - mean.value()) / each.standardUncertainty();
			chiSquared += off * off;
		}
		int n = measurements.size();
		double birge = (n > 1) ? Math.max(1, Math.sqrt(chiSquared / (n - 1))) : 1;
		return new Combination(new Estimate(mean.value(), mean.standardUncertainty() * birge), chiSquared, birge,
				allAgree(measurements));
	}

	private static boolean allAgree(List<Estimate> measurements) {
		for (Estimate one : measurements) {
			for (Estimate other : measurements) {
				if (Math.abs(one.value() - other.value()) > Math.hypot(one.expanded(), other.expanded())) {
					return false;
				}
			}
		}
		return true;
	}

	/** The arithmetic; the figures in the unit given. */
	static List<WorkingLine> working(List<Estimate> measurements, String unit) {
		Combination combined = of(measurements);
		String over = measurements.stream()
			.map((each) -> "%s / %s²".formatted(Working.number(each.value()), u(each)))
			.collect(Collectors.joining(" + ", "(", ")"));
		String under = measurements.stream()
			.map((each) -> "1 / %s²".formatted(u(each)))
			.collect(Collectors.joining(" + ", "(", ")"));
		return List.of(
				new WorkingLine("x = Σ (xi / ui²) / Σ (1 / ui²)", over + " / " + under, combined.mean.value(), unit),
				new WorkingLine("χ² = Σ ((xi - x) / ui)²", measurements.size() + " measurements", combined.chiSquared,
						""),
				new WorkingLine("u(x) = max(1, √(χ² / (n - 1))) / √Σ (1 / ui²)",
						"%s / √%s".formatted(Figures.rounded(combined.birgeRatio, 4), under),
						combined.mean.standardUncertainty(), unit));
	}

	private static String u(Estimate estimate) {
		return Figures.rounded(estimate.standardUncertainty(), 4);
	}

}

package county.bigtree.registry.measurement;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;

import county.bigtree.domain.measuring.Kind;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.review.Agreement;
import county.bigtree.domain.review.CheckedFigure;
import county.bigtree.domain.review.GrowthWindow;
import tools.jackson.databind.json.JsonMapper;

/**
 * One figure as filed and as checked, the way a sign-off keeps it: with the numbers that
 * its verdict was given by, girths in inches, the others in feet.
 *
 * @param kind girth, height or crown
 * @param growthLeast by how much the checked figure had to exceed the filed one
 * @param growthMost by how much it might
 * @param verdict agrees, disagrees or look-again
 */
public record KeptFigure(String kind, BigDecimal filed, BigDecimal filedU, BigDecimal checked, BigDecimal checkedU,
		double tolerance, double growthLeast, double growthMost, String verdict) {

	/** Of the figures as reductions keep them. */
	private static final int DECIMALS = 4;

	private static final MathContext SIGNIFICANT = new MathContext(15, RoundingMode.HALF_EVEN);

	public static List<KeptFigure> of(Agreement agreement) {
		return agreement.figures().stream().map(KeptFigure::of).toList();
	}

	/** As a sign-off's row holds them. */
	public static List<KeptFigure> read(JsonMapper json, String kept) {
		return List.of(json.readValue(kept, KeptFigure[].class));
	}

	private static KeptFigure of(CheckedFigure figure) {
		return new KeptFigure(figure.kind().name().toLowerCase(Locale.ROOT), kept(figure.filed().value()),
				kept(figure.filed().standardUncertainty()), kept(figure.checked().value()),
				kept(figure.checked().standardUncertainty()), figure.tolerance(), figure.growth().least(),
				figure.growth().most(), figure.verdict().code());
	}

	/**
	 * Judged again by what is kept.
	 */
	public CheckedFigure judged() {
		return new CheckedFigure(Kind.valueOf(this.kind.toUpperCase(Locale.ROOT)),
				new Estimate(this.filed.doubleValue(), this.filedU.doubleValue()),
				new Estimate(this.checked.doubleValue(), this.checkedU.doubleValue()), this.tolerance,
				new GrowthWindow(this.growthLeast, this.growthMost));
	}

	/**
	 * A figure as its reduction keeps it, so that a verdict rests on what is on record:
	 * the database takes it into a column of four decimals by its 15 significant digits.
	 */
	public static BigDecimal kept(double value) {
		return new BigDecimal(value, SIGNIFICANT).setScale(DECIMALS, RoundingMode.HALF_UP);
	}

}

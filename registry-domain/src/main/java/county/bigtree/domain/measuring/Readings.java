package county.bigtree.domain.measuring;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

import county.bigtree.domain.points.Correlations;
import county.bigtree.domain.points.Points;
import county.bigtree.domain.points.Score;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;
import org.jspecify.annotations.Nullable;

/**
 * The readings of one visit, as entered: at least one. A visit may lack a figure, and
 * then gives no score.
 */
public record Readings(@Nullable GirthReading girth, @Nullable HeightReading height, @Nullable CrownReading crown) {

	public Readings {
		if (girth == null && height == null && crown == null) {
			throw new InvalidReadingException("", Flaw.MISSING, "must hold a girth, a height or a crown reading");
		}
	}

	/**
	 * The figures, by the formulas of today.
	 * @throws InvalidReadingException naming the reading whose entries come to what no
	 * tree has
	 */
	public Reduced reduce() {
		Estimate c = estimate("girth", this.girth);
		Estimate h = estimate("height", this.height);
		Estimate w = estimate("crown", this.crown);
		return (c == null || h == null || w == null) ? new Reduced(Reduced.VERSION, c, h, w)
				: new Reduced(Reduced.VERSION, c, h, w,
						SharedGirth.correlations(this.girth, this.height, this.crown, c, h, w)
							.withHeightCrown(SharedBaseline.correlation(this.height, this.crown,
									h.standardUncertainty(), w.standardUncertainty())));
	}

	/** All arithmetic, in the order girth, height, crown, points. */
	public List<WorkingLine> working() {
		List<WorkingLine> lines = new ArrayList<>();
		all().forEach((reading) -> lines.addAll(reading.working()));
		reduce().score().ifPresent((score) -> lines.addAll(sum(reduce(), score)));
		return lines;
	}

	public List<Caution> cautions() {
		return all().flatMap((reading) -> reading.cautions().stream()).toList();
	}

	private Stream<Reading> all() {
		return Stream.<@Nullable Reading>of(this.girth, this.height, this.crown)
			.filter(Objects::nonNull)
			.map(Objects::requireNonNull);
	}

	private static @Nullable Estimate estimate(String field, @Nullable Reading reading) {
		if (reading == null) {
			return null;
		}
		try {
			return reading.estimate();
		}
		catch (InvalidReadingException ex) {
			throw ex.within(field);
		}
	}

	private static List<WorkingLine> sum(Reduced reduced, Score score) {
		Estimate c = Objects.requireNonNull(reduced.girthInches());
		Estimate h = Objects.requireNonNull(reduced.heightFeet());
		Estimate w = Objects.requireNonNull(reduced.crownSpreadFeet());
		String sum = "%s + %s + %s / 4".formatted(Working.number(c.value()), Working.number(h.value()),
				Working.number(w.value()));
		String roots = "√(%s² + %s² + (%s / 4)²)".formatted(Figures.rounded(c.standardUncertainty(), 4),
				Figures.rounded(h.standardUncertainty(), 4), Figures.rounded(w.standardUncertainty(), 4));
		double points = Points.unrounded(c.value(), h.value(), w.value()).doubleValue();
		boolean shared = !reduced.correlations().equals(Correlations.NONE);
		String formula = shared ? "u(P) = √(u(C)² + u(H)² + (u(W) / 4)² + 2 × what they share)"
				: "u(P) = √(u(C)² + u(H)² + (u(W) / 4)²)";
		String numbers = shared ? roots.substring(0, roots.length() - 1) + " + 2 × " + shared(reduced, c, h, w) + ")"
				: roots;
		return List.of(new WorkingLine("P = C + H + W / 4", sum, points, "points"),
				new WorkingLine(formula, numbers, score.standardUncertainty(), "points"));
	}

	private static String shared(Reduced reduced, Estimate c, Estimate h, Estimate w) {
		Correlations r = reduced.correlations();
		double quarter = w.standardUncertainty() / 4;
		return Figures.rounded(r.girthHeight() * c.standardUncertainty() * h.standardUncertainty()
				+ r.girthCrown() * c.standardUncertainty() * quarter
				+ r.heightCrown() * h.standardUncertainty() * quarter, 4);
	}

}

package county.bigtree.domain.measuring;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * Mean spread from the centre of the stem to the crown's edge in four or more directions:
 * W = 2 (w1 r1 + ... + wn rn). Evenly spaced spokes weigh the same, 1/n (common
 * practice); where bearings are given each weighs the share of the circle nearest to it.
 * Spokes taped from the bark lack the stem's radius, the same for all: W = 2 (...) + C /
 * π.
 *
 * @param radii four or more; zero says that the crown doesn't reach that way
 * @param bearings empty, or one for each radius, in degrees from north, increasing, from
 * 0 to below 360, with no gap of 180 or more
 * @param stemGirth where the radii were taped from the bark, more than zero, or null
 */
public record CrownSpokes(List<Length> radii, List<Double> bearings, @Nullable Length stemGirth,
		Notes notes) implements CrownReading {

	private static final int FEWEST = 4;

	private static final int MOST = 360;

	public CrownSpokes {
		radii = List.copyOf(radii);
		bearings = List.copyOf(bearings);
		if (radii.size() < FEWEST || radii.size() > MOST) {
			throw new InvalidReadingException("radii", Flaw.WRONG_COUNT,
					"must be from 4 to " + MOST + " but was " + radii.size());
		}
		for (int i = 0; i < radii.size(); i++) {
			Figures.notNegative("radii/" + i, radii.get(i).feet());
		}
		Figures.positive("radii", radii.stream().mapToDouble(Length::feet).sum());
		if (!bearings.isEmpty()) {
			Bearings.check(bearings, radii.size());
		}
		if (stemGirth != null) {
			stemGirth.positive("stemGirth");
		}
	}

	public CrownSpokes(List<Length> radii, List<Double> bearings, Notes notes) {
		this(radii, bearings, null, notes);
	}

	public static CrownSpokes evenlySpaced(List<Length> radii, Notes notes) {
		return new CrownSpokes(radii, List.of(), notes);
	}

	@Override
	public Method method() {
		return Method.SPOKES;
	}

	@Override
	public Estimate estimate() {
		return figure().estimate();
	}

	private Figure figure() {
		double[] weights = weights();
		List<Budget.Term> terms = new ArrayList<>();
		double spread = 0;
		for (int i = 0; i < weights.length; i++) {
			Estimate radius = this.radii.get(i).estimate(LengthUnit.FT, InstrumentDefaults.CROWN_RADIUS);
			spread += 2 * weights[i] * radius.value();
			terms.add(Budget.term("r" + (i + 1), 2 * weights[i], radius));
		}
		if (this.stemGirth != null) {
			Estimate girth = this.stemGirth.estimate(LengthUnit.FT, InstrumentDefaults.GIRTH_TAPE);
			spread += girth.value() / Math.PI;
			terms.add(Budget.term("C", 1 / Math.PI, girth));
		}
		return Figure.spread(spread, new Budget(terms));
	}

	/** The edge as seen from the centre of the stem, in feet: areas and other spreads. */
	public CrownOutline outline() {
		double stem = (this.stemGirth != null) ? RoundStem.radiusFeet(this.stemGirth.inches()) : 0;
		List<Double> feet = this.radii.stream().map((radius) -> radius.feet() + stem).toList();
		return this.bearings.isEmpty() ? CrownOutline.evenlySpaced(feet) : new CrownOutline(feet, this.bearings);
	}

	/** Each spoke's own, in feet, in their order. */
	public List<Double> radiusUncertainties() {
		return this.radii.stream()
			.map((radius) -> radius.estimate(LengthUnit.FT, InstrumentDefaults.CROWN_RADIUS).standardUncertainty())
			.toList();
	}

	/** Of the stem's radius that was added to each, in feet; 0 where none was. */
	double stemRadiusUncertainty() {
		return (this.stemGirth == null) ? 0
				: this.stemGirth.estimate(LengthUnit.FT, InstrumentDefaults.GIRTH_TAPE).standardUncertainty()
						/ (2 * Math.PI);
	}

	/** Of each spoke, its share of the circle. */
	double[] weights() {
		return this.bearings.isEmpty() ? Bearings.evenWeights(this.radii.size()) : Bearings.weights(this.bearings);
	}

	@Override
	public List<WorkingLine> working() {
		Working working = new Working();
		for (int i = 0; i < this.radii.size(); i++) {
			working.converted("r" + (i + 1), this.radii.get(i), LengthUnit.FT);
		}
		if (this.stemGirth != null) {
			working.converted("C", this.stemGirth, LengthUnit.FT);
		}
		String moreFormula = (this.stemGirth != null) ? " + C / π" : "";
		String more = (this.stemGirth != null) ? " + " + Working.feet(this.stemGirth) + " ft / π" : "";
		if (this.bearings.isEmpty()) {
			String sum = this.radii.stream().map(Working::feet).collect(Collectors.joining(" + ", "(", ") ft"));
			return working.then(figure().lines("2 (r1 + ... + rn) / n" + moreFormula,
					"2 × " + sum + " / " + this.radii.size() + more));
		}
		return working.then(figure().lines("2 (w1 r1 + ... + wn rn)" + moreFormula, weightedSum() + more));
	}

	private String weightedSum() {
		double[] weights = weights();
		List<String> products = new ArrayList<>();
		for (int i = 0; i < weights.length; i++) {
			products.add(Figures.rounded(weights[i], 4) + " × " + Working.feet(this.radii.get(i)));
		}
		return "2 × (" + String.join(" + ", products) + ") ft";
	}

	@Override
	public List<Caution> cautions() {
		if (this.radii.stream().noneMatch((radius) -> radius.feet() == 0)) {
			return List.of();
		}
		return List.of(new Caution("crown-one-sided", "The crown doesn't reach to one side of the stem."));
	}

}

package county.bigtree.domain.measuring;

import java.util.List;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;

/**
 * Girth at breast height, which can't be taped, between a girth below and one above it,
 * taken as changing evenly: C = C1 + (C2 - C1) (4.5 - h1) / (h2 - h1). See {@link Taper}.
 *
 * @param lowerGirth more than zero
 * @param lowerHeight above ground, more than zero and below 4.5 ft
 * @param upperGirth more than zero
 * @param upperHeight above 4.5 ft, at most 2 ft above the lower one
 */
public record TaperGirth(Length lowerGirth, Length lowerHeight, Length upperGirth, Length upperHeight,
		GirthNotes notes) implements GirthReading {

	public TaperGirth {
		lowerGirth.positive("lowerGirth");
		upperGirth.positive("upperGirth");
		double low = lowerHeight.positive("lowerHeight").feet();
		double high = upperHeight.positive("upperHeight").feet();
		require(low < MeasuringPoint.BREAST_HEIGHT_FEET, "lowerHeight", "must be below 4.5 ft", lowerHeight);
		require(high > MeasuringPoint.BREAST_HEIGHT_FEET, "upperHeight", "must be above 4.5 ft", upperHeight);
		require(high - low <= Taper.FARTHEST_APART, "upperHeight", "must be at most 2 ft above the lower one",
				upperHeight);
	}

	private static void require(boolean holds, String path, String range, Length found) {
		if (!holds) {
			throw new InvalidReadingException(path, Flaw.OUT_OF_RANGE, range + " but was " + found.text());
		}
	}

	@Override
	public Method method() {
		return Method.TAPER;
	}

	@Override
	public Estimate estimate() {
		return figure().estimate();
	}

	private Figure figure() {
		return Taper.figure(MeasuringPoint.BREAST_HEIGHT_FEET,
				this.lowerGirth.estimate(LengthUnit.IN, InstrumentDefaults.GIRTH_TAPE),
				this.lowerHeight.estimate(LengthUnit.FT, InstrumentDefaults.MARK_HEIGHT),
				this.upperGirth.estimate(LengthUnit.IN, InstrumentDefaults.GIRTH_TAPE),
				this.upperHeight.estimate(LengthUnit.FT, InstrumentDefaults.MARK_HEIGHT));
	}

	@Override
	public List<WorkingLine> working() {
		String c1 = Working.inches(this.lowerGirth);
		String h1 = Working.feet(this.lowerHeight);
		String numbers = "%s in + (%s - %s) in × (4.5 - %s) / (%s - %s)".formatted(c1, Working.inches(this.upperGirth),
				c1, h1, Working.feet(this.upperHeight), h1);
		return new Working().converted("C1", this.lowerGirth, LengthUnit.IN)
			.converted("h1", this.lowerHeight, LengthUnit.FT)
			.converted("C2", this.upperGirth, LengthUnit.IN)
			.converted("h2", this.upperHeight, LengthUnit.FT)
			.then(figure().lines("C1 + (C2 - C1) (4.5 - h1) / (h2 - h1)", numbers));
	}

	@Override
	public List<Caution> cautions() {
		return this.notes.cautions();
	}

}

package county.bigtree.domain.measuring;

import java.util.List;
import java.util.Objects;

import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * Girth read from a tape around the stem: C is what the tape says, less what a tilt adds
 * (see {@link TapeTilt}) where one was measured: C = R / f(t). A taut tape spans the
 * hollows of a fluted stem (Moran and Williams 2002, North. J. Appl. For. 19:28-33).
 *
 * @param girth more than zero
 * @param tilt of the tape from square to the stem, less than 45 degrees either way, or
 * null
 */
public record TapeGirth(Length girth, @Nullable Angle tilt, GirthNotes notes) implements GirthReading {

	private static final double MOST_TILT = 45;

	public TapeGirth {
		girth.positive("girth");
		if (tilt != null) {
			Figures.within("tilt", tilt.degrees(), Math.nextUp(-MOST_TILT), Math.nextDown(MOST_TILT),
					"less than 45 degrees either way");
		}
	}

	public TapeGirth(Length girth, GirthNotes notes) {
		this(girth, null, notes);
	}

	@Override
	public Method method() {
		return Method.TAPE;
	}

	@Override
	public Estimate estimate() {
		return figure().estimate();
	}

	private Figure figure() {
		Estimate read = this.girth.estimate(LengthUnit.IN, InstrumentDefaults.GIRTH_TAPE);
		if (this.tilt == null) {
			return Figure.girth(read.value(), Budget.of(Budget.term("tape", 1, read)));
		}
		Estimate t = Figure.radians(this.tilt);
		double factor = factor();
		double byTilt = -read.value() * TapeTilt.slope(t.value()) / (factor * factor);
		return Figure.girth(read.value() / factor,
				Budget.of(Budget.term("R", 1 / factor, read), Budget.term("t", byTilt, t)));
	}

	private double factor() {
		return TapeTilt.factor(Math.abs(Objects.requireNonNull(this.tilt).degrees()));
	}

	@Override
	public List<WorkingLine> working() {
		if (this.tilt == null) {
			return new Working().then(figure().lines("tape", this.girth.text()));
		}
		Working working = new Working().converted("R", this.girth, LengthUnit.IN);
		working.ratio("f = (2 / π) E(sin t) / cos t", "t = " + this.tilt.text(), factor());
		return working.then(figure().lines("R / f", Working.inches(this.girth) + " in / " + Working.number(factor())));
	}

	@Override
	public List<Caution> cautions() {
		return this.notes.cautions();
	}

}

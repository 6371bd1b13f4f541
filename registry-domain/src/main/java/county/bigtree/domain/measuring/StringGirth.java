package county.bigtree.domain.measuring;

import java.util.List;
import java.util.Objects;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.quantity.Length;
import county.bigtree.domain.quantity.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * Girth from a string wrapped around the stem and laid along a rule: C = m L + r for m
 * whole lengths L of the rule and a rest r (common practice). Either the length is given,
 * or the three of sticks, stick length and rest.
 *
 * @param length of the string, more than zero, or null
 * @param sticks how many whole lengths of the rule, 0 or more, or null
 * @param stickLength of the rule, more than zero, or null
 * @param rest from 0 to below one length of the rule, or null
 */
public record StringGirth(@Nullable Length length, @Nullable Integer sticks, @Nullable Length stickLength,
		@Nullable Length rest, GirthNotes notes) implements GirthReading {

	private static final int MOST_STICKS = 10_000;

	public StringGirth {
		if (length != null) {
			requireNoSticks(sticks, stickLength, rest);
			length.positive("length");
		}
		else {
			requireSticks(sticks, stickLength, rest);
		}
	}

	public static StringGirth of(Length length, GirthNotes notes) {
		return new StringGirth(length, null, null, null, notes);
	}

	public static StringGirth ofSticks(int sticks, Length stickLength, Length rest, GirthNotes notes) {
		return new StringGirth(null, sticks, stickLength, rest, notes);
	}

	@Override
	public Method method() {
		return Method.STRING;
	}

	@Override
	public Estimate estimate() {
		return figure().estimate();
	}

	private Figure figure() {
		if (this.length != null) {
			Estimate read = this.length.estimate(LengthUnit.IN, InstrumentDefaults.STRING);
			return Figure.girth(read.value(), Budget.of(Budget.term("string", 1, read)));
		}
		int m = Objects.requireNonNull(this.sticks);
		Estimate stick = Objects.requireNonNull(this.stickLength).estimate(LengthUnit.IN, InstrumentDefaults.RULE);
		Estimate remainder = Objects.requireNonNull(this.rest).estimate(LengthUnit.IN, InstrumentDefaults.STRING_REST);
		double girth = m * stick.value() + remainder.value();
		return Figure.girth(girth,
				Budget.of(Budget.term("L", m, stick), Budget.term("r", 1, remainder),
						Budget.term("join", Math.sqrt(m), InstrumentDefaults.STRING_JOIN),
						Budget.term("stretch", girth, InstrumentDefaults.STRING_STRETCH)));
	}

	@Override
	public List<WorkingLine> working() {
		if (this.length != null) {
			return new Working().then(figure().lines("string", this.length.text()));
		}
		Length stick = Objects.requireNonNull(this.stickLength);
		Length remainder = Objects.requireNonNull(this.rest);
		return new Working().converted("L", stick, LengthUnit.IN)
			.converted("r", remainder, LengthUnit.IN)
			.then(figure().lines("m L + r",
					this.sticks + " × " + Working.inches(stick) + " in + " + Working.inches(remainder) + " in"));
	}

	@Override
	public List<Caution> cautions() {
		return this.notes.cautions();
	}

	private static void requireNoSticks(@Nullable Integer sticks, @Nullable Length stickLength, @Nullable Length rest) {
		if (sticks != null || stickLength != null || rest != null) {
			throw new InvalidReadingException("length", Flaw.CONTRADICTION,
					"must not be given beside sticks, stickLength or rest");
		}
	}

	private static void requireSticks(@Nullable Integer sticks, @Nullable Length stickLength, @Nullable Length rest) {
		if (sticks == null) {
			boolean begun = stickLength != null || rest != null;
			throw new InvalidReadingException(begun ? "sticks" : "length", Flaw.MISSING,
					"must be given: the length of the string, or sticks, stickLength and rest");
		}
		Figures.within("sticks", sticks, 0, MOST_STICKS, "from 0 to " + MOST_STICKS);
		if (stickLength == null || rest == null) {
			throw new InvalidReadingException((stickLength == null) ? "stickLength" : "rest", Flaw.MISSING,
					"must be given with sticks");
		}
		double most = Math.nextDown(stickLength.positive("stickLength").inches());
		Figures.within("rest", rest.inches(), 0, most, "from 0 to below the stick's " + stickLength.text());
		if (sticks == 0) {
			rest.positive("rest");
		}
	}

}

package county.bigtree.domain.quantity;

import java.util.List;
import java.util.stream.Collectors;

import org.jspecify.annotations.Nullable;

/**
 * A length as it was entered, which is how it is kept: in one unit, in feet and inches,
 * in segments where the tape was too short, along a slope, or several times over. Finite
 * and at most {@value #MOST_METRES} m either way; the reading that holds it says whether
 * zero or less makes sense there.
 */
public sealed interface Length
		permits Length.Single, Length.FeetAndInches, Length.Segments, SlopedLength, RepeatedLength {

	/** No length taken at a tree is longer. */
	int MOST_METRES = 10_000;

	/** In the unit asked for. */
	double in(LengthUnit unit);

	/**
	 * With its standard uncertainty: the one stated, else the default. Segments without a
	 * stated one are of one instrument, and together worth what their sum would be at
	 * once; stated ones are independent.
	 */
	Estimate estimate(LengthUnit unit, DefaultUncertainty byDefault);

	/**
	 * Refuses zero and less, where a reading needs more; names the field it has there.
	 */
	default Length positive(String field) {
		Figures.positive((this instanceof Single) ? field + "/value" : field, metres());
		return this;
	}

	/** Whether the measurer stated an uncertainty for the whole of it. */
	boolean statesUncertainty();

	/**
	 * As a person would write it: {@code 3.75 m}, {@code 12 ft 3.5 in},
	 * {@code 30 ft + 7 ft}.
	 */
	String text();

	default double inches() {
		return in(LengthUnit.IN);
	}

	default double feet() {
		return in(LengthUnit.FT);
	}

	default double metres() {
		return in(LengthUnit.M);
	}

	static Length of(double value, LengthUnit unit) {
		return new Single(value, unit, null);
	}

	static Length of(double value, LengthUnit unit, double standardUncertainty) {
		return new Single(value, unit, standardUncertainty);
	}

	static Length feetAndInches(double feet, double inches) {
		return new FeetAndInches(feet, inches, null);
	}

	static Length alongSlope(Length taped, Angle slope) {
		return new SlopedLength(taped, slope);
	}

	static Length repeats(Length... readings) {
		return new RepeatedLength(List.of(readings));
	}

	static Length segments(Length... parts) {
		return new Segments(List.of(parts));
	}

	/**
	 * One number in one unit.
	 *
	 * @param value as entered
	 * @param unit of the value and of the uncertainty
	 * @param standardUncertainty stated by the measurer, or null
	 */
	record Single(double value, LengthUnit unit, @Nullable Double standardUncertainty) implements Length {

		public Single {
			double most = LengthUnit.M.to(unit, MOST_METRES);
			Figures.within("value", value, -most, most, "at most " + MOST_METRES + " m either way");
			StatedUncertainty.check(standardUncertainty, most);
		}

		@Override
		public double in(LengthUnit wanted) {
			return this.unit.to(wanted, this.value);
		}

		@Override
		public Estimate estimate(LengthUnit wanted, DefaultUncertainty byDefault) {
			double u = (this.standardUncertainty != null) ? this.unit.to(wanted, this.standardUncertainty)
					: LengthUnit.IN.to(wanted, byDefault.inches(inches()));
			return new Estimate(in(wanted), u);
		}

		@Override
		public boolean statesUncertainty() {
			return this.standardUncertainty != null;
		}

		@Override
		public String text() {
			return Figures.plain(this.value) + " " + this.unit.code();
		}

	}

	/**
	 * Feet and inches together. Whole feet, and less than twelve inches.
	 *
	 * @param wholeFeet 0 or more
	 * @param inchesOver from 0 to below 12
	 * @param standardUncertainty in inches, stated by the measurer, or null
	 */
	record FeetAndInches(double wholeFeet, double inchesOver, @Nullable Double standardUncertainty) implements Length {

		public FeetAndInches {
			double most = LengthUnit.M.to(LengthUnit.FT, MOST_METRES);
			Figures.within("feet", wholeFeet, 0, most, "whole and from 0 to " + Figures.plain(Math.floor(most)));
			if (wholeFeet != Math.rint(wholeFeet)) {
				throw new InvalidReadingException("feet", Flaw.OUT_OF_RANGE,
						"must be whole when inches are given but was " + Figures.plain(wholeFeet));
			}
			Figures.within("inches", inchesOver, 0, Math.nextDown(12.0), "from 0 to below 12 when feet are given");
			StatedUncertainty.check(standardUncertainty, LengthUnit.M.to(LengthUnit.IN, MOST_METRES));
		}

		@Override
		public double in(LengthUnit wanted) {
			return LengthUnit.IN.to(wanted, this.wholeFeet * 12 + this.inchesOver);
		}

		@Override
		public Estimate estimate(LengthUnit wanted, DefaultUncertainty byDefault) {
			double total = in(LengthUnit.IN);
			double u = (this.standardUncertainty != null) ? this.standardUncertainty : byDefault.inches(total);
			return new Estimate(in(wanted), LengthUnit.IN.to(wanted, u));
		}

		@Override
		public boolean statesUncertainty() {
			return this.standardUncertainty != null;
		}

		@Override
		public String text() {
			return Figures.plain(this.wholeFeet) + " ft " + Figures.plain(this.inchesOver) + " in";
		}

	}

	/**
	 * Parts laid end to end.
	 *
	 * @param parts two or more, each greater than zero, none in segments or repeated
	 * itself
	 */
	record Segments(List<Length> parts) implements Length {

		public Segments {
			parts = List.copyOf(parts);
			if (parts.size() < 2) {
				throw new InvalidReadingException("segments", Flaw.WRONG_COUNT,
						"must be two or more but was " + parts.size());
			}
			for (int i = 0; i < parts.size(); i++) {
				String path = "segments/" + i;
				if (parts.get(i) instanceof Segments || parts.get(i) instanceof RepeatedLength) {
					throw new InvalidReadingException(path, Flaw.CONTRADICTION,
							"must not be in segments or repeated itself");
				}
				Figures.positive(path, parts.get(i).metres());
			}
			Figures.within("segments", parts.stream().mapToDouble(Length::metres).sum(), 0, MOST_METRES,
					"at most " + MOST_METRES + " m together");
		}

		@Override
		public double in(LengthUnit wanted) {
			return this.parts.stream().mapToDouble((part) -> part.in(wanted)).sum();
		}

		@Override
		public Estimate estimate(LengthUnit wanted, DefaultUncertainty byDefault) {
			double unstated = this.parts.stream()
				.filter((part) -> !part.statesUncertainty())
				.mapToDouble(Length::inches)
				.sum();
			// each its part of what one instrument is worth over all of them
			DefaultUncertainty share = (inches) -> byDefault.inches(unstated) * inches / unstated;
			double together = 0;
			double squares = 0;
			for (Length part : this.parts) {
				double u = part.estimate(wanted, share).standardUncertainty();
				if (part.statesUncertainty()) {
					squares += u * u;
				}
				else {
					together += u;
				}
			}
			return new Estimate(in(wanted), Math.sqrt(squares + together * together));
		}

		@Override
		public boolean statesUncertainty() {
			return this.parts.stream().allMatch(Length::statesUncertainty);
		}

		@Override
		public String text() {
			return this.parts.stream().map(Length::text).collect(Collectors.joining(" + "));
		}

	}

}

package county.bigtree.domain.check;

import java.util.List;

import county.bigtree.domain.quantity.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * A way in which one figure, or all of them, may have been taken for another unit. The
 * factors are exact (NIST SP 811, appendix B).
 *
 * @param figure the figure's name, for programs
 * @param unit as which it may have been read, for programs
 * @param words what may have happened, after "as if"
 * @param girth factor that mends the girth
 * @param height factor that mends the height
 * @param spread factor that mends the spread
 */
record UnitGuess(String figure, String unit, String words, double girth, double height, double spread) {

	private static final double METRE = 1 / 0.3048;

	private static final double CENTIMETRE = 1 / 2.54;

	private static final double FOOT = 12;

	static final List<UnitGuess> ALL = List.of(girth("cm", "the girth was read in centimetres", CENTIMETRE),
			girth("in", "the girth was read in inches and entered as centimetres", 1 / CENTIMETRE),
			girth("ft", "the girth was read in feet and entered as inches", FOOT),
			girth("in", "the girth was read in inches and entered as feet", 1 / FOOT),
			girth("diameter", "the girth is a diameter", Math.PI),
			girth("girth", "the diameter is a girth", 1 / Math.PI),
			new UnitGuess("height", "m", "the height was read in metres and entered as feet", 1, METRE, 1),
			new UnitGuess("height", "ft", "the height was read in feet and entered as metres", 1, 1 / METRE, 1),
			new UnitGuess("crown", "m", "the crown was read in metres and entered as feet", 1, 1, METRE),
			new UnitGuess("crown", "ft", "the crown was read in feet and entered as metres", 1, 1, 1 / METRE),
			new UnitGuess("height-and-crown", "m", "height and crown were read in metres and entered as feet", 1, METRE,
					METRE),
			new UnitGuess("height-and-crown", "ft", "height and crown were read in feet and entered as metres", 1,
					1 / METRE, 1 / METRE));

	private static UnitGuess girth(String unit, String words, double factor) {
		return new UnitGuess("girth", unit, words, factor, 1, 1);
	}

	Sizes mend(Sizes sizes) {
		return new Sizes(times(sizes.girthInches(), this.girth), times(sizes.heightFeet(), this.height),
				times(sizes.spreadFeet(), this.spread));
	}

	/** Whether it would change a figure that is there. */
	boolean concerns(Sizes sizes) {
		return (this.girth != 1 && sizes.girthInches() != null) || (this.height != 1 && sizes.heightFeet() != null)
				|| (this.spread != 1 && sizes.spreadFeet() != null);
	}

	private static @Nullable Estimate times(@Nullable Estimate figure, double factor) {
		return (figure != null) ? figure.times(factor) : null;
	}

}

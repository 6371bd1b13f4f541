package county.bigtree.domain.check;

import java.util.List;
import java.util.function.Predicate;

import county.bigtree.domain.place.Position;
import org.jspecify.annotations.Nullable;

/**
 * What the register knows beside a filing, as far as whoever files may know it.
 *
 * @param earlier the visit before, of a tree on the books
 * @param neighbours trees of the same species on the books that stand near, as shown to
 * whoever files
 * @param county whether a place lies in it; null if its line is not known
 * @param form how trees grow there
 * @param eligible whether the tree may be ranked
 * @param rules what its rules say of the filing
 * @param sun where the sun stands
 */
public record Known(@Nullable Earlier earlier, List<Neighbour> neighbours, @Nullable Predicate<Position> county,
		CountyForm form, boolean eligible, RulesOfFiling rules, SunElevation sun) {

	public Known {
		neighbours = List.copyOf(neighbours);
	}

	/**
	 * A county whose trees are like those of {@code form} and of which no more is known.
	 */
	public static Known onlyForm(CountyForm form) {
		return new Known(null, List.of(), null, form, true, RulesOfFiling.DEFAULTS, (at, position) -> Double.NaN);
	}

}

package county.bigtree.domain.measuring;

import java.util.List;

import county.bigtree.domain.quantity.Estimate;

/**
 * What one reading comes to.
 *
 * @param estimate inches for a girth, feet for a height or a spread
 * @param working the arithmetic, line by line
 * @param cautions what lessens the figure's worth
 */
public record Reduction(Estimate estimate, List<WorkingLine> working, List<Caution> cautions) {

	public Reduction {
		working = List.copyOf(working);
		cautions = List.copyOf(cautions);
	}

}

package county.bigtree.domain.measuring;

import java.util.List;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;

/**
 * One diameter for a tree of many stems: the root of the sum of their squared diameters
 * (Forest Inventory and Analysis core field guide, woodland species, from memory).
 */
public final class RootCollar {

	private RootCollar() {
	}

	/** In the unit of the diameters, of which there is at least one, each above zero. */
	public static Estimate equivalentDiameter(List<Estimate> stems) {
		if (stems.isEmpty()) {
			throw new InvalidReadingException("stems", Flaw.WRONG_COUNT, "must be at least one but was 0");
		}
		for (int i = 0; i < stems.size(); i++) {
			Figures.positive("stems/" + i, stems.get(i).value());
		}
		double diameter = Uncertainty.combined(stems.stream().mapToDouble(Estimate::value).toArray());
		double u = Uncertainty.combined(
				stems.stream().mapToDouble((stem) -> stem.value() / diameter * stem.standardUncertainty()).toArray());
		return new Estimate(diameter, u);
	}

}

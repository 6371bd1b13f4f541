package county.bigtree.domain.quantity;

import org.jspecify.annotations.Nullable;

/**
 * The rule for an uncertainty that the measurer states: not negative, and not absurd.
 */
final class StatedUncertainty {

	private StatedUncertainty() {
	}

	static void check(@Nullable Double stated, double most) {
		if (stated != null) {
			Figures.within("standardUncertainty", stated, 0, most, "from 0 to " + Figures.rounded(most, 9));
		}
	}

}

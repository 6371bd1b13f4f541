package county.bigtree.domain.check;

import java.util.Comparator;
import java.util.Optional;

import county.bigtree.domain.quantity.Estimate;

/**
 * A tree of the same species on the books within the joint accuracy of both places. Where
 * a place is shown only roughly, the girths must be alike too. How far apart they are is
 * not told.
 */
final class LikelySameTree implements Check {

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		return known.neighbours()
			.stream()
			.filter((one) -> one.metres() <= one.jointAccuracyMetres())
			.filter((one) -> one.jointAccuracyMetres() <= Thresholds.WELL_PLACED || alike(one, filed))
			.min(Comparator.comparingDouble(Neighbour::metres))
			.map((one) -> Finding.question("likely-same-tree",
					"Tree %s of the same species is on the books here: is this the same one? Then file a remeasurement of it instead."
						.formatted(one.tag()),
					new Finding.Numbers().with("tree", one.tag())));
	}

	private static boolean alike(Neighbour one, Filed filed) {
		Estimate girth = filed.sizes().girthInches();
		Double other = one.girthInches();
		return girth != null && other != null
				&& Math.abs(girth.value() - other) <= Thresholds.SAME_GIRTH * Math.max(girth.value(), other);
	}

}

package county.bigtree.domain.check;

import java.util.Comparator;
import java.util.Optional;

import county.bigtree.domain.quantity.Estimate;

/**
 * A tree of the same species on the books, or nominated, within the joint accuracy of
 * both places. Where a place is shown only roughly, the girths must be alike too. How far
 * apart they are is not told, a tree on the books is told before one that waits, and to
 * whoever may not know of the tree no more than that it may be there.
 */
final class LikelySameTree implements Check {

	private static final String CODE = "likely-same-tree";

	private static final Comparator<Neighbour> TOLD_FIRST = Comparator.comparing(Neighbour::waiting)
		.thenComparingDouble(Neighbour::metres)
		.thenComparing(Neighbour::tag, Comparator.nullsLast(Comparator.naturalOrder()));

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		Estimate girth = filed.sizes().girthInches();
		Double inches = (girth != null) ? girth.value() : null;
		return known.neighbours()
			.stream()
			.filter((one) -> one.mayBeOneOf(inches))
			.min(TOLD_FIRST)
			.map(LikelySameTree::finding);
	}

	private static Finding finding(Neighbour one) {
		if (one.tag() == null) {
			return Finding.question(CODE,
					"A tree of the same species may be on the books here already: is this the same one? Then file a remeasurement of it instead.",
					new Finding.Numbers());
		}
		String detail = one.waiting()
				? "Tree %s of the same species was nominated here and waits for a decision: is this the same one?"
				: "Tree %s of the same species is on the books here: is this the same one? Then file a remeasurement of it instead.";
		return Finding.question(CODE, detail.formatted(one.tag()), new Finding.Numbers().with("tree", one.tag()));
	}

}

package county.bigtree.domain.review;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.Flaw;
import county.bigtree.domain.quantity.InvalidReadingException;

/**
 * The E_n score of ISO 13528:2015 (from memory): the difference of two results over the
 * root sum of squares of their expanded uncertainties. They agree at 1 or less, either
 * way.
 */
public final class EnScore {

	private EnScore() {
	}

	/** At least one of the uncertainties is more than zero. */
	public static double of(Estimate first, Estimate second) {
		double expanded = Math.hypot(first.expanded(), second.expanded());
		if (expanded == 0) {
			throw new InvalidReadingException("standardUncertainty", Flaw.NOT_POSITIVE,
					"must be greater than 0 on one side at least but was 0 on both");
		}
		return (first.value() - second.value()) / expanded;
	}

}

package county.bigtree.domain.measuring;

import java.util.List;

import county.bigtree.domain.quantity.Estimate;
import county.bigtree.domain.quantity.InvalidReadingException;

/**
 * One reading as it was entered, by one method. It is valid from its making, never
 * changes, and can say at any time what it comes to.
 */
public sealed interface Reading permits GirthReading, HeightReading, CrownReading {

	Method method();

	/**
	 * The figure this comes to, with its standard uncertainty by first-order propagation
	 * (JCGM 100:2008, 5.1.2): inches for a girth, feet for a height or a spread.
	 * @throws InvalidReadingException if entries that are sound one by one come to what
	 * no tree has
	 */
	Estimate estimate();

	/** The arithmetic, as a class would write it on the board. */
	List<WorkingLine> working();

	/** What whoever uses this figure should know. */
	List<Caution> cautions();

	default Reduction reduce() {
		return new Reduction(estimate(), working(), cautions());
	}

}

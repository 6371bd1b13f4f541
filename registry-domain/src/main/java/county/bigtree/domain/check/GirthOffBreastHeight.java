package county.bigtree.domain.check;

import java.util.Optional;

import county.bigtree.domain.measuring.Caution;
import county.bigtree.domain.measuring.GirthNotes;
import county.bigtree.domain.quantity.Length;

/**
 * A girth taken at 1.3 m, as metric countries have it, or at another height than 4.5 ft.
 * Its code is that of the caution that the reading itself has.
 */
final class GirthOffBreastHeight implements Check {

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		GirthNotes notes = filed.girthNotes();
		Length height = notes.heightAboveGround();
		return (height == null) ? Optional.empty()
				: notes.offBreastHeight().map((caution) -> finding(caution, height, notes));
	}

	private static Finding finding(Caution caution, Length height, GirthNotes notes) {
		boolean unexplained = notes.placement() == null;
		return Finding.note(caution.code(),
				caution.detail() + (unexplained ? " Why it was taken there was not said." : ""),
				new Finding.Numbers().with("heightAboveGroundFeet", height.feet()));
	}

}

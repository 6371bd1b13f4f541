package county.bigtree.registry.transfer;

import java.time.LocalDate;
import java.util.List;

import county.bigtree.domain.quantity.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * A mapping that fits its file: how each row becomes a tree with a measurement.
 *
 * @param accuracyMetres how well the positions are known
 * @param rowKey the column that tells rows apart, or null where their content does
 * @param beside what is kept or compared beside the figures
 */
record ImportPlan(boolean dryRun, LocalDate measuredOn, String basis, Entry species, @Nullable Entry tag, Figure girth,
		Figure height, Figure crown, Entry latitude, Entry longitude, double accuracyMetres, @Nullable Entry rowKey,
		Beside beside) {

	/**
	 * One entry of a row.
	 *
	 * @param label what it is called where something is wrong with it
	 * @param index of its column, or -1 for a constant
	 * @param constant the constant, or empty
	 */
	record Entry(String label, int index, String constant) {

		String in(List<String> cells) {
			return ((this.index < 0) ? this.constant : cells.get(this.index)).strip();
		}

	}

	/**
	 * What is kept for coordinators only, and what is compared.
	 */
	record Beside(@Nullable Entry owner, @Nullable Entry contact, @Nullable Entry visitNotes,
			@Nullable Entry statedPoints) {
	}

	/**
	 * A length of the tree.
	 *
	 * @param method of the reading that it becomes
	 * @param field in which that reading holds it
	 * @param unit of numbers that bring none
	 */
	record Figure(Entry entry, String method, String field, LengthUnit unit) {
	}

}

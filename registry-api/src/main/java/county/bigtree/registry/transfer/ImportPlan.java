package county.bigtree.registry.transfer;

import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.domain.quantity.LengthUnit;
import org.jspecify.annotations.Nullable;

/**
 * A mapping that fits its file: how each row becomes a tree with measurements.
 *
 * @param measuredOn the day of visits that name none, or null
 * @param visits where the figures of each visit stand
 * @param accuracyMetres how well the positions are known
 * @param rowKey the column that tells rows apart, or null where their content does
 * @param keepIncomplete whether a row that lacks figures becomes a tree to be measured
 * @param beside what is kept or compared beside the figures
 */
record ImportPlan(boolean dryRun, @Nullable KnownDay measuredOn, String basis, Entry species, @Nullable Entry tag,
		List<Visit> visits, Entry latitude, Entry longitude, double accuracyMetres, @Nullable Entry rowKey,
		boolean keepIncomplete, Beside beside) {

	ImportPlan {
		visits = List.copyOf(visits);
	}

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
	 * A visit of the tree.
	 *
	 * @param measuredOn its day, or null where the plan says it
	 * @param girth null where it was never measured at that visit; so the others
	 */
	record Visit(@Nullable Entry measuredOn, @Nullable Figure girth, @Nullable Figure height, @Nullable Figure crown) {

		/** Whether the row has an entry for any of its figures. */
		boolean made(List<String> cells) {
			return Stream.of(this.girth, this.height, this.crown)
				.filter(Objects::nonNull)
				.anyMatch((figure) -> figure.entry().index() >= 0 && !figure.entry().in(cells).isEmpty());
		}

	}

	/**
	 * What is kept in words, seen, or compared.
	 */
	record Beside(@Nullable Entry owner, @Nullable Entry contact, @Nullable Entry finder, @Nullable Entry visitNotes,
			@Nullable Entry popularName, @Nullable Entry condition, @Nullable Entry statedPoints) {
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

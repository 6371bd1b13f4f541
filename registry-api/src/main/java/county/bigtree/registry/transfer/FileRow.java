package county.bigtree.registry.transfer;

import java.util.List;

import county.bigtree.registry.measurement.MeasurementBody;
import county.bigtree.registry.tree.PlaceBody;
import org.jspecify.annotations.Nullable;

/**
 * What a row of a file comes to.
 */
sealed interface FileRow {

	/** As a spreadsheet numbers it. */
	int number();

	/**
	 * A tree with its measurement.
	 *
	 * @param key by which the row is known in its county
	 * @param species key of the species, or of the genus where the name says no more
	 * @param ranked whether a tree of that name can be ranked: not by its genus alone
	 * @param tag its tag in the file, or null
	 * @param words what is for coordinators only
	 * @param note what a coordinator should know of it, or null
	 */
	record Sound(int number, String key, String species, boolean ranked, @Nullable String tag, PlaceBody place,
			MeasurementBody measurement, PrivateWords words, @Nullable String note) implements FileRow {
	}

	/**
	 * What a row says that is for coordinators only.
	 */
	record PrivateWords(@Nullable String owner, @Nullable String contact, @Nullable String visitNotes) {

		boolean any() {
			return this.owner != null || this.contact != null || this.visitNotes != null;
		}

	}

	/**
	 * A row that can't be taken.
	 *
	 * @param reason all that is wrong with it, in plain words
	 */
	record Rejected(int number, String reason, List<String> cells) implements FileRow {

		public Rejected {
			cells = List.copyOf(cells);
		}

	}

	/**
	 * A row that could be taken if it were known what its name means.
	 *
	 * @param key by which the row is known in its county
	 */
	record Waiting(int number, String key, String name, List<String> cells) implements FileRow {

		public Waiting {
			cells = List.copyOf(cells);
		}

	}

}

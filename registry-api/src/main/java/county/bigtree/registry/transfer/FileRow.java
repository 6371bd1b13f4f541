package county.bigtree.registry.transfer;

import java.time.LocalDate;
import java.util.List;

import county.bigtree.domain.standing.Condition;
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
	 * A tree with its measurements.
	 *
	 * @param key by which the row is known in its county
	 * @param species key of the species, or of the genus where the name says no more
	 * @param ranked whether such a tree can be ranked: its name is not only a genus, and
	 * one of its visits has all figures
	 * @param tag its tag in the file, or null
	 * @param visits its measurements, of different days; none where nothing was measured
	 * @param sight in what condition it was seen, where it is more than that it stands
	 * @param note what a coordinator should know of it, or null
	 */
	record Sound(int number, String key, String species, boolean ranked, @Nullable String tag, PlaceBody place,
			List<MeasurementBody> visits, @Nullable Sight sight, Words words,
			@Nullable String note) implements FileRow {

		public Sound {
			visits = List.copyOf(visits);
		}

		/** The same row, of which only these visits and this sight are new. */
		Sound news(List<MeasurementBody> newVisits, @Nullable Sight newSight) {
			return new Sound(this.number, this.key, this.species, this.ranked, this.tag, this.place, newVisits,
					newSight, this.words, this.note);
		}

		/** The same row with something more to be told of it. */
		Sound noting(String more) {
			return new Sound(this.number, this.key, this.species, this.ranked, this.tag, this.place, this.visits,
					this.sight, this.words, (this.note != null) ? this.note + "; " + more : more);
		}

	}

	/**
	 * In what condition the tree was seen.
	 */
	record Sight(Condition condition, LocalDate observedOn) {
	}

	/**
	 * What a row says in words: for coordinators only but for the popular name.
	 */
	record Words(@Nullable String owner, @Nullable String contact, @Nullable String finder, @Nullable String visitNotes,
			@Nullable String popularName) {

		boolean any() {
			return this.owner != null || this.contact != null || this.finder != null || this.visitNotes != null
					|| this.popularName != null;
		}

	}

	/**
	 * A row that can't be taken.
	 *
	 * @param reason all that is wrong with it, in plain words
	 * @param cells as they came; none where they were erased
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

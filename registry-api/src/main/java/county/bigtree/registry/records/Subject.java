package county.bigtree.registry.records;

import java.time.LocalDate;
import java.util.UUID;

import county.bigtree.registry.standing.BookKey;

/**
 * What a folder is about.
 */
public sealed interface Subject {

	/** In a few words, for the index of the folder. */
	String title();

	/**
	 * A tree.
	 */
	record OfTree(UUID tree, String tag, String county) implements Subject {

		@Override
		public String title() {
			return "tree " + this.tag;
		}

	}

	/**
	 * A species in a county.
	 */
	record OfBook(BookKey book) implements Subject {

		@Override
		public String title() {
			return this.book.species() + " in " + this.book.county();
		}

	}

	/**
	 * A person: what they filed, signed, reported and were sent to.
	 */
	record OfPerson(UUID person) implements Subject {

		@Override
		public String title() {
			return "person " + this.person;
		}

	}

	/**
	 * What was recorded in a county from one day to another, both included, in UTC.
	 */
	record OfDays(String county, LocalDate from, LocalDate to) implements Subject {

		@Override
		public String title() {
			return this.county + " from " + this.from + " to " + this.to;
		}

	}

}

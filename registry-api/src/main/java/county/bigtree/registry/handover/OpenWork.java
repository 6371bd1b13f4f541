package county.bigtree.registry.handover;

import java.time.LocalDate;
import java.util.List;

import county.bigtree.registry.people.Actor;
import org.jspecify.annotations.Nullable;

/**
 * A part of the handover. Each bean of this type is told, in the order of the beans.
 */
public interface OpenWork {

	/** What there is to tell of a county to a coordinator of it. */
	List<Section> of(Actor coordinator, String county);

	/**
	 * A heading with what stands under it.
	 *
	 * @param heading in words
	 * @param none what is said where there are no items
	 */
	record Section(String heading, List<Item> items, String none) {

		public Section {
			items = List.copyOf(items);
		}

	}

	/**
	 * One thing.
	 *
	 * @param tag of the tree it is about, or null
	 * @param day since when, by when or from when, as the heading says; or null
	 * @param text what it is, in a sentence
	 */
	record Item(@Nullable String tag, @Nullable LocalDate day, String text) {

	}

}

package county.bigtree.registry.story;

import java.util.UUID;

import county.bigtree.registry.standing.BookKey;

/**
 * Whose story is told.
 */
sealed interface StoryOf {

	/**
	 * That of a tree with all that is merged into it.
	 */
	record OfTree(UUID tree) implements StoryOf {
	}

	/**
	 * That of a species in a county.
	 */
	record OfSpecies(BookKey book) implements StoryOf {
	}

}

package county.bigtree.registry.story;

import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;

import county.bigtree.domain.place.Showing;
import county.bigtree.registry.disclosure.Showings;

import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/**
 * Which trees of a story are not to be known again by who hears it: those that an owner
 * does not let be listed today. Verifiers hear of all trees of their counties, and who
 * may hear the story of a tree at all hears of that tree.
 */
@Component
class Withheld {

	private final Showings showings;

	private final Families families;

	Withheld(Showings showings, Families families) {
		this.showings = showings;
		this.families = families;
	}

	/**
	 * The trees withheld from the asker in this part of a story.
	 */
	From from(Asker asker, StoryOf whose, Collection<StoryFact> facts, Collection<StoryEffect> effects) {
		List<UUID> met = Stream
			.concat(facts.stream()
				.flatMap((fact) -> Stream.concat(Stream.ofNullable(fact.tree()), Stream.ofNullable(fact.other()))),
					effects.stream().map(StoryEffect::tree))
			.distinct()
			.toList();
		Set<UUID> own = (whose instanceof StoryOf.OfTree of) ? this.families.of(of.tree()) : Set.of();
		Set<UUID> unlisted = this.showings.unlisted(met.stream().filter((tree) -> !own.contains(tree)).toList());
		return new From(asker, unlisted);
	}

	/**
	 * What is withheld from somebody.
	 *
	 * @param unlisted the trees concerned
	 */
	record From(Asker asker, Set<UUID> unlisted) {

		From {
			unlisted = Set.copyOf(unlisted);
		}

		/** The fact as it is to be said. */
		StoryFact named(StoryFact fact) {
			boolean tree = withheld(fact.county(), fact.tree());
			boolean other = withheld(fact.county(), fact.other());
			return (tree || other) ? fact.named(tree ? Showing.UNLISTED : fact.tag(),
					other ? Showing.UNLISTED : fact.otherTag(), "Somebody") : fact;
		}

		/** The fact as it is to be written down. */
		StoryFact bare(StoryFact fact) {
			return fact.without(withheld(fact.county(), fact.tree()), withheld(fact.county(), fact.other()));
		}

		StoryEffect named(StoryEffect effect) {
			return isWithheld(effect) ? effect.named(Showing.UNLISTED) : effect;
		}

		boolean isWithheld(StoryEffect effect) {
			return withheld(effect.book().county(), effect.tree());
		}

		private boolean withheld(String county, @Nullable UUID tree) {
			return tree != null && this.unlisted.contains(tree) && !this.asker.isInside(county);
		}

	}

}

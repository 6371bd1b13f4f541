package county.bigtree.registry.story;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;

import county.bigtree.registry.standing.BookKey;

import org.springframework.stereotype.Component;

/**
 * What changed of scores, first places and titles, in the order in which it is told.
 */
@Component
class StoryEffects {

	private static final Comparator<StoryEffect> ORDER = Comparator.comparing(StoryEffect::at)
		.thenComparing(StoryEffect::kind)
		.thenComparing(StoryEffect::tag)
		.thenComparing(StoryEffect::book);

	private final ScoreEffects scores;

	private final PlaceEffects places;

	private final TitleEffects titles;

	StoryEffects(ScoreEffects scores, PlaceEffects places, TitleEffects titles) {
		this.scores = scores;
		this.places = places;
		this.titles = titles;
	}

	/**
	 * The changes of first place in each ranking of which the story tells.
	 */
	Map<BookKey, SortedMap<Instant, FirstPlaces.Turn>> firstPlaces(StoryOf whose) {
		return this.places.turns(whose);
	}

	/**
	 * What changed at the instants.
	 * @param told the facts told of them
	 */
	List<StoryEffect> at(StoryOf whose, Collection<Instant> instants, List<StoryFact> told,
			Map<BookKey, SortedMap<Instant, FirstPlaces.Turn>> firstPlaces) {
		List<StoryEffect> effects = new ArrayList<>(this.scores.at(whose, instants, told));
		firstPlaces.forEach((book, turns) -> {
			effects.addAll(this.places.at(whose, book, turns, instants));
			effects.addAll(this.titles.at(book, instants));
		});
		effects.sort(ORDER);
		return effects;
	}

}

package county.bigtree.registry.story.web;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import county.bigtree.registry.http.Paged;
import county.bigtree.registry.story.Story;
import county.bigtree.registry.story.StoryEffect;
import county.bigtree.registry.story.StoryFact;
import org.jspecify.annotations.Nullable;

/**
 * A part of a story.
 */
record StoryJson(String headline, List<Entry> items, @Nullable String next) implements Paged {

	static StoryJson from(Story story, @Nullable String next) {
		return new StoryJson(story.headline(), story.entries().stream().map(Entry::from).toList(), next);
	}

	/**
	 * What was recorded at one instant with all that it changed; without facts, what the
	 * day changed by coming.
	 */
	record Entry(Instant recordedAt, LocalDate day, @Nullable String by, String sentence, List<Fact> facts,
			List<Effect> effects) {

		static Entry from(Story.Entry entry) {
			return new Entry(entry.recordedAt(), entry.day(), entry.by(), entry.prose(),
					entry.facts().stream().map((told) -> Fact.from(told, entry.day())).toList(),
					entry.effects().stream().map(Effect::from).toList());
		}

	}

	/**
	 * A fact.
	 */
	record Fact(String kind, @Nullable UUID tree, @Nullable String tag, @Nullable UUID otherTree,
			@Nullable String otherTag, int trees, @Nullable UUID measurement, @Nullable LocalDate effectiveOn,
			@Nullable String detail, @Nullable String earlier, @Nullable BigDecimal points, @Nullable String reason,
			String sentence) {

		static Fact from(Story.Told<StoryFact> told, LocalDate day) {
			StoryFact fact = told.what();
			return new Fact(fact.kind().code(), fact.tree(), fact.tag(), fact.other(), fact.otherTag(), fact.trees(),
					fact.measurement(), day.equals(fact.effectiveOn()) ? null : fact.effectiveOn(), fact.detail(),
					fact.earlier(), fact.points(), fact.reason(), told.sentence());
		}

	}

	/**
	 * A change of a score, a first place or a title.
	 *
	 * @param tree null, like the tag, where an owner does not let the tree be listed
	 */
	record Effect(String kind, @Nullable UUID tree, @Nullable String tag, String county, String species,
			@Nullable BigDecimal pointsBefore, @Nullable BigDecimal points, @Nullable LocalDate from,
			@Nullable LocalDate until, @Nullable String titleBefore, @Nullable String title, @Nullable String reason,
			String sentence) {

		static Effect from(Story.Told<StoryEffect> told) {
			StoryEffect effect = told.what();
			return new Effect(effect.kind().code(), told.listed() ? effect.tree() : null,
					told.listed() ? effect.tag() : null, effect.book().county(), effect.book().species(),
					effect.before(), effect.points(), effect.from(), effect.until(), effect.earlierTitle(),
					effect.title(), effect.reason(), told.sentence());
		}

	}

}

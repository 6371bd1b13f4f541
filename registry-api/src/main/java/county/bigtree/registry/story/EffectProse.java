package county.bigtree.registry.story;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Says all that one change did: what belongs together stands in one sentence, such as a
 * score with the place that it took, and a title with who held it before.
 */
final class EffectProse {

	private final EffectSentences sentences;

	private final List<StoryEffect> effects;

	/** What another sentence says already. */
	private final Set<StoryEffect> said = new HashSet<>();

	private EffectProse(EffectSentences sentences, List<StoryEffect> effects) {
		this.sentences = sentences;
		this.effects = effects;
	}

	/**
	 * The sentences.
	 * @param effects of one change, in the order in which they are told
	 */
	static List<String> of(EffectSentences sentences, List<StoryEffect> effects) {
		EffectProse prose = new EffectProse(sentences, effects);
		List<String> told = new ArrayList<>();
		for (StoryEffect effect : effects) {
			if (!prose.said.contains(effect)) {
				told.add(prose.say(effect));
			}
		}
		return told;
	}

	private String say(StoryEffect effect) {
		String alone = this.sentences.say(effect);
		return switch (effect.kind()) {
			case SCORE_BEGAN ->
				taken(effect).map((place) -> extend(alone, " and took first place" + from(place))).orElse(alone);
			case SCORE_CHANGED -> changed(effect, alone);
			case SCORE_ENDED -> lost(effect).map((place) -> extend(alone, " and first place")).orElse(alone);
			case FIRST_PLACE_TAKEN -> extend(alone, from(effect));
			case FIRST_PLACE_LOST -> by(effect).map((place) -> {
				this.said.add(place);
				return extend(this.sentences.say(place), from(effect, place));
			}).orElse(alone);
			case TITLE_ENDED -> ended(effect, alone);
			default -> alone;
		};
	}

	private String changed(StoryEffect score, String alone) {
		Optional<StoryEffect> taken = taken(score);
		if (taken.isPresent()) {
			return extend(alone, ", and it took first place in " + this.sentences.ranking(score) + from(taken.get()));
		}
		return lost(score)
			.map((place) -> extend(alone, ", and it lost first place in " + this.sentences.ranking(score)))
			.orElse(alone);
	}

	/**
	 * Where one tree gave up the title and one took it, both are told at once.
	 */
	private String ended(StoryEffect ended, String alone) {
		String title = String.valueOf(ended.earlierTitle());
		List<StoryEffect> began = those(ended,
				(one) -> one.kind() == StoryEffect.Kind.TITLE_BEGAN && title.equals(one.title()));
		boolean single = began.size() == 1
				&& those(ended, (one) -> one.kind() == StoryEffect.Kind.TITLE_ENDED && title.equals(one.earlierTitle()))
					.size() == 1;
		if (!single) {
			return alone;
		}
		StoryEffect next = began.get(0);
		if ("overtaken".equals(ended.reason())) {
			this.said.add(next);
			return this.sentences.followed(next, ended);
		}
		if ("rival-left".equals(next.reason())) {
			this.said.add(next);
			return "%s %s became %s in its place.".formatted(alone, next.tag(), title);
		}
		return alone;
	}

	private Optional<StoryEffect> taken(StoryEffect score) {
		return ofTree(score, StoryEffect.Kind.FIRST_PLACE_TAKEN);
	}

	/** Said with the score, unless the tree that took it says from whom. */
	private Optional<StoryEffect> lost(StoryEffect score) {
		return ofTree(score, StoryEffect.Kind.FIRST_PLACE_LOST);
	}

	private Optional<StoryEffect> ofTree(StoryEffect score, StoryEffect.Kind kind) {
		Optional<StoryEffect> place = those(score, (one) -> one.kind() == kind && one.tree().equals(score.tree()))
			.stream()
			.filter((one) -> !this.said.contains(one))
			.findFirst();
		place.ifPresent(this.said::add);
		return place;
	}

	/** From whom first place was taken, where that is one tree and not told yet. */
	private String from(StoryEffect taken) {
		return single(taken, StoryEffect.Kind.FIRST_PLACE_LOST).map((lost) -> {
			this.said.add(lost);
			return from(lost, taken);
		}).orElse("");
	}

	private static String from(StoryEffect lost, StoryEffect taken) {
		return lost.tag().equals(taken.tag()) ? " from another" : " from " + lost.tag();
	}

	private Optional<StoryEffect> by(StoryEffect lost) {
		return single(lost, StoryEffect.Kind.FIRST_PLACE_LOST)
			.flatMap((only) -> single(lost, StoryEffect.Kind.FIRST_PLACE_TAKEN));
	}

	private Optional<StoryEffect> single(StoryEffect beside, StoryEffect.Kind kind) {
		List<StoryEffect> all = those(beside, (one) -> one.kind() == kind);
		return (all.size() == 1) ? all.stream().filter((one) -> !this.said.contains(one)).findFirst()
				: Optional.empty();
	}

	private List<StoryEffect> those(StoryEffect beside, Predicate<StoryEffect> such) {
		return this.effects.stream().filter((one) -> one.book().equals(beside.book())).filter(such).toList();
	}

	private static String extend(String sentence, String more) {
		return sentence.substring(0, sentence.length() - 1) + more + ".";
	}

}

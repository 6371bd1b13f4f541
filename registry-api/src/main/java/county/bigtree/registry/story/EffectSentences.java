package county.bigtree.registry.story;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Objects;

import org.jspecify.annotations.Nullable;

/**
 * Says what a change did to a tree's score, place or title in one sentence.
 */
final class EffectSentences {

	private static final Map<String, String> WHY_LOST = Map.ofEntries(Map.entry("overtaken", "another tree passed it"),
			Map.entry("fell", "it fell"), Map.entry("removed", "it was removed"),
			Map.entry("stale", "it had gone too long without being measured or seen"), Map.entry("died", "it died"),
			Map.entry("damaged", "it lost a part and was not measured again in time"),
			Map.entry("set-aside", "a measurement was set aside"), Map.entry("revoked", "a sign-off was revoked"),
			Map.entry("re-identified", "it proved to be of another species"),
			Map.entry("relocated", "it proved to stand elsewhere"), Map.entry("merged", "two entries were one tree"),
			Map.entry("split", "one entry was two trees"), Map.entry("ineligible", "it is not eligible"),
			Map.entry("rulebook", "the rules are new"), Map.entry("ruled", "it was ruled which stem is scored"),
			Map.entry("reduced-again", "its readings were reduced by mended formulas"),
			Map.entry("folded", "its species is counted as another"),
			Map.entry("taken-off", "it was taken off the books"),
			Map.entry("recomputed", "the register's books were put in order"));

	private static final Map<String, String> WHY_WON = Map.of("rival-left", "as a rival gave way", "rulebook",
			"since the rules are new", "recomputed", "since the register's books were put in order");

	private final Names.Known names;

	EffectSentences(Names.Known names) {
		this.names = names;
	}

	String say(StoryEffect effect) {
		return switch (effect.kind()) {
			case SCORE_BEGAN, SCORE_CHANGED, SCORE_ENDED -> score(effect);
			case PAST_SCORE, PAST_SCORE_WITHDRAWN -> past(effect);
			case FIRST_PLACE_TAKEN, FIRST_PLACE_SHARED, FIRST_PLACE_LOST -> place(effect);
			case TITLE_BEGAN, TITLE_CHANGED, TITLE_ENDED -> title(effect);
		};
	}

	private String score(StoryEffect effect) {
		return switch (effect.kind()) {
			case SCORE_BEGAN -> "%s came into %s with %s points.".formatted(effect.tag(), ranking(effect),
					Words.points(points(effect.points())));
			case SCORE_ENDED -> "%s left %s, where it had %s points.".formatted(effect.tag(), ranking(effect),
					Words.points(points(effect.before())));
			default -> changed(effect.tag(), points(effect.before()), points(effect.points()));
		};
	}

	private static String changed(String tag, BigDecimal before, BigDecimal after) {
		boolean alike = Words.points(before).equals(Words.points(after));
		return "The score of %s %s from %s to %s points.".formatted(tag,
				(after.compareTo(before) > 0) ? "rose" : "fell", alike ? before.toPlainString() : Words.points(before),
				alike ? after.toPlainString() : Words.points(after));
	}

	private static String past(StoryEffect effect) {
		String span = "from %s to %s".formatted(Words.day(Objects.requireNonNull(effect.from())),
				Words.day(Objects.requireNonNull(effect.until()).minusDays(1)));
		String points = Words.points(points(effect.points()));
		return (effect.kind() == StoryEffect.Kind.PAST_SCORE)
				? "As is known now, %s had %s points %s.".formatted(effect.tag(), points, span)
				: "The %s points of %s %s no longer stand.".formatted(points, effect.tag(), span);
	}

	private String place(StoryEffect effect) {
		return switch (effect.kind()) {
			case FIRST_PLACE_TAKEN -> "%s took first place in %s.".formatted(effect.tag(), ranking(effect));
			case FIRST_PLACE_SHARED -> "%s came to share first place in %s.".formatted(effect.tag(), ranking(effect));
			default -> "%s lost first place in %s.".formatted(effect.tag(), ranking(effect));
		};
	}

	private String title(StoryEffect effect) {
		String reason = String.valueOf(effect.reason());
		return switch (effect.kind()) {
			case TITLE_BEGAN ->
				"%s became %s%s.".formatted(effect.tag(), titled(effect, effect.title()), because(WHY_WON, reason));
			case TITLE_ENDED -> "%s ceased to be %s%s.".formatted(effect.tag(), titled(effect, effect.earlierTitle()),
					WHY_LOST.containsKey(reason) ? ": " + WHY_LOST.get(reason) : "");
			default ->
				"%s went from %s to %s.".formatted(effect.tag(), effect.earlierTitle(), titled(effect, effect.title()));
		};
	}

	/**
	 * That a title passed from one tree to another that passed it.
	 */
	String followed(StoryEffect next, StoryEffect ended) {
		return "%s followed %s as %s.".formatted(next.tag(), next.tag().equals(ended.tag()) ? "another" : ended.tag(),
				titled(next, next.title()));
	}

	private static String because(Map<String, String> words, String reason) {
		return words.containsKey(reason) ? ", " + words.get(reason) : "";
	}

	private String titled(StoryEffect effect, @Nullable String title) {
		return "%s %s %s".formatted(Words.possessive(this.names.county(effect.book().county())), title,
				this.names.species(effect.book().species()));
	}

	String ranking(StoryEffect effect) {
		return "%s %s ranking".formatted(Words.possessive(this.names.county(effect.book().county())),
				this.names.species(effect.book().species()));
	}

	private static BigDecimal points(@Nullable BigDecimal points) {
		return Objects.requireNonNull(points);
	}

}

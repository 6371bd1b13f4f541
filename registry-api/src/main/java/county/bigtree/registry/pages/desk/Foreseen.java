package county.bigtree.registry.pages.desk;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * What a decision would change, in words.
 *
 * @param titles a sentence for each title that would change hands
 * @param scores for each tree whose score would change
 * @param past that what is known of earlier days would change too, or null
 */
public record Foreseen(List<String> titles, List<ScoreChange> scores, @Nullable String past) {

	/** From what a dry run answered. */
	public static Foreseen of(JsonNode rehearsed, DeskWords words) {
		Map<String, TitleChange> titles = new LinkedHashMap<>();
		Map<String, ScoreLines> scores = new LinkedHashMap<>();
		rehearsed.path("changes").forEach((change) -> {
			change.at("/titles/ended").forEach((line) -> titleOf(titles, line).ended = line);
			change.at("/titles/began").forEach((line) -> titleOf(titles, line).began = line);
			change.at("/scores/withdrawn").forEach((line) -> scoresOf(scores, line).takesAway(line));
			change.at("/scores/closed").forEach((line) -> scoresOf(scores, line).takesAway(line));
			change.at("/scores/added").forEach((line) -> scoresOf(scores, line).adds(line));
		});
		String since = rehearsed.path("pastSince").asString("");
		boolean past = !since.isEmpty() && since.compareTo(words.today().toString()) < 0;
		return new Foreseen(titles.values().stream().map((title) -> title.told(words)).toList(),
				scores.values().stream().map((lines) -> lines.told(words)).toList(),
				past ? words.say("foreseen.past", words.day(since)) : null);
	}

	/** Whether no title and no score would change. */
	public boolean isNothing() {
		return this.titles.isEmpty() && this.scores.isEmpty();
	}

	private static String key(JsonNode line) {
		return line.path("tree").asString("") + line.path("county").asString("") + line.path("species").asString("");
	}

	private static String species(JsonNode line, DeskWords words) {
		return words.say("foreseen.of", words.species(line.path("species").asString("")),
				words.county(line.path("county").asString("")));
	}

	private static TitleChange titleOf(Map<String, TitleChange> titles, JsonNode line) {
		return titles.computeIfAbsent(key(line), (key) -> new TitleChange());
	}

	private static ScoreLines scoresOf(Map<String, ScoreLines> scores, JsonNode line) {
		return scores.computeIfAbsent(key(line), (key) -> new ScoreLines(line));
	}

	/**
	 * The score of a tree before and after.
	 *
	 * @param before in points; or that it has none
	 */
	public record ScoreChange(String tag, String species, String before, String after) {
	}

	private static final class TitleChange {

		private @Nullable JsonNode ended;

		private @Nullable JsonNode began;

		String told(DeskWords words) {
			JsonNode last = this.ended;
			JsonNode first = this.began;
			if (last != null && first != null) {
				return words.say("foreseen.turned", tag(first), title(first, words), title(last, words),
						species(first, words), why(first, words));
			}
			JsonNode only = (first != null) ? first : java.util.Objects.requireNonNull(last);
			return words.say((first != null) ? "foreseen.began" : "foreseen.ended", tag(only), title(only, words),
					species(only, words), why(only, words));
		}

		private static String tag(JsonNode line) {
			return line.path("tag").asString("");
		}

		private static String title(JsonNode line, DeskWords words) {
			return words.say("title." + line.path("title").asString(""));
		}

		private static String species(JsonNode line, DeskWords words) {
			return Foreseen.species(line, words);
		}

		private static String why(JsonNode line, DeskWords words) {
			return words.say("reason." + line.path("why").asString(""));
		}

	}

	/** The lines of a tree: what counts of each side is its latest. */
	private static final class ScoreLines {

		private final JsonNode any;

		private final List<JsonNode> before = new ArrayList<>();

		private final List<JsonNode> after = new ArrayList<>();

		ScoreLines(JsonNode any) {
			this.any = any;
		}

		void takesAway(JsonNode line) {
			this.before.add(line);
		}

		void adds(JsonNode line) {
			this.after.add(line);
		}

		ScoreChange told(DeskWords words) {
			return new ScoreChange(this.any.path("tag").asString(""),
					Foreseen.species(this.any, words), latest(this.before, words),
					latest(this.after, words));
		}

		private static String latest(List<JsonNode> lines, DeskWords words) {
			return lines.stream()
				.max((one, other) -> one.path("effectiveOn")
					.asString("")
					.compareTo(other.path("effectiveOn").asString("")))
				.map((line) -> points(line, words))
				.orElseGet(() -> words.say("foreseen.none"));
		}

		private static String points(JsonNode line, DeskWords words) {
			BigDecimal points = line.path("points").decimalValue();
			String ends = line.path("endsOn").asString("");
			return ends.isEmpty() ? words.say("foreseen.points", words.points(points))
					: words.say("foreseen.points.until", words.points(points), words.day(ends));
		}

	}

}

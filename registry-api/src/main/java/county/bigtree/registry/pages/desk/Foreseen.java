package county.bigtree.registry.pages.desk;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

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
			change.at("/scores/added").forEach((line) -> scoresOf(scores, line).added.add(line));
			change.at("/scores/withdrawn").forEach((line) -> scoresOf(scores, line).withdrawn.add(line));
			change.at("/scores/closed").forEach((line) -> scoresOf(scores, line).closed.add(line));
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

	/**
	 * The lines of a tree. What is added with an end, or closed as soon as it is added,
	 * is of the past only.
	 */
	private static final class ScoreLines {

		private final JsonNode any;

		private final List<JsonNode> added = new ArrayList<>();

		private final List<JsonNode> withdrawn = new ArrayList<>();

		private final List<JsonNode> closed = new ArrayList<>();

		ScoreLines(JsonNode any) {
			this.any = any;
		}

		ScoreChange told(DeskWords words) {
			List<JsonNode> ending = this.closed.stream().filter((line) -> !this.added.contains(line)).toList();
			JsonNode before = latest(Stream.concat(this.withdrawn.stream(), ending.stream()).toList());
			JsonNode after = latest(this.added.stream().filter((line) -> ends(line).isEmpty()).toList());
			return new ScoreChange(this.any.path("tag").asString(""), Foreseen.species(this.any, words),
					(before != null) ? points(before, words) : words.say("foreseen.none"),
					(after != null) ? points(after, words) : ended(ending, words));
		}

		private static String ended(List<JsonNode> ending, DeskWords words) {
			JsonNode last = latest(ending);
			return (last != null) ? words.say("foreseen.none.since", words.day(ends(last)))
					: words.say("foreseen.none");
		}

		private static @Nullable JsonNode latest(List<JsonNode> lines) {
			return lines.stream()
				.max(Comparator.comparing((line) -> line.path("effectiveOn").asString("")))
				.orElse(null);
		}

		private static String ends(JsonNode line) {
			return line.path("endsOn").asString("");
		}

		private static String points(JsonNode line, DeskWords words) {
			return words.say("foreseen.points", words.points(line.path("points").decimalValue()));
		}

	}

}

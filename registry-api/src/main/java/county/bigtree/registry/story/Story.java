package county.bigtree.registry.story;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.jspecify.annotations.Nullable;

/**
 * A story, or a part of it.
 *
 * @param headline how things stand today, in one sentence
 * @param entries what happened, in the order of recording
 * @param last the instant after which the next part begins, or null where nothing follows
 */
public record Story(String headline, List<Entry> entries, @Nullable Instant last) {

	public Story {
		entries = List.copyOf(entries);
	}

	/**
	 * What was recorded at one instant, with all that it changed; or what a day changed
	 * by coming.
	 *
	 * @param day the day in the county
	 * @param by the name under which the person is credited who recorded it, if one did
	 * @param changes the effects in sentences, what belongs together in one
	 */
	public record Entry(Instant recordedAt, LocalDate day, @Nullable String by, List<Told<StoryFact>> facts,
			List<Told<StoryEffect>> effects, List<String> changes) {

		public Entry {
			facts = List.copyOf(facts);
			effects = List.copyOf(effects);
			changes = changes.stream().map(Told::capitalised).toList();
		}

		/** All of it. */
		public String prose() {
			return Stream.concat(this.facts.stream().map(Told::sentence), this.changes.stream())
				.collect(Collectors.joining(" "));
		}

	}

	/**
	 * Something with the sentence that says it.
	 *
	 * @param listed whether an effect's tree may be known again by who hears it
	 */
	public record Told<T>(T what, String sentence, boolean listed) {

		public Told {
			sentence = capitalised(sentence);
		}

		private static String capitalised(String sentence) {
			return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
		}

	}

}

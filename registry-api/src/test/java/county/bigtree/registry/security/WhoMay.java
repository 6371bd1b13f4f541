package county.bigtree.registry.security;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * One row of the table that says who may do what: an endpoint, what it is asked of, and
 * what comes of it for each asker with their own and with another's.
 *
 * @param of what the address leads to, or the move that is made; {@code -} where it
 * doesn't matter
 */
record WhoMay(String method, String path, String of, Map<Asker, Map<Whose, Outcome>> outcomes) {

	private static final int BEFORE_THE_ASKERS = 3;

	String endpoint() {
		return this.method + " " + this.path;
	}

	Outcome outcome(Asker asker, Whose whose) {
		return Objects.requireNonNull(Objects.requireNonNull(this.outcomes.get(asker)).get(whose));
	}

	boolean letsAnybodyThrough() {
		return this.outcomes.values().stream().anyMatch((cell) -> cell.containsValue(Outcome.YES));
	}

	/**
	 * Whether it is a page's form, which is sent empty here: what comes of a filled one
	 * is for the tests of the pages.
	 */
	boolean isForm() {
		return this.method.equals("POST") && !this.path.startsWith("/api/");
	}

	String name() {
		return endpoint() + " (" + this.of + ")";
	}

	static List<WhoMay> table() throws IOException {
		try (InputStream in = Objects.requireNonNull(WhoMay.class.getResourceAsStream("who-may.txt"))) {
			return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines()
				.filter((line) -> !line.isBlank() && !line.startsWith("#"))
				.map(WhoMay::row)
				.toList();
		}
	}

	private static WhoMay row(String line) {
		List<String> words = new ArrayList<>(Arrays.asList(line.trim().split("\\s+")));
		if (words.size() != BEFORE_THE_ASKERS + Asker.values().length) {
			throw new IllegalArgumentException("Not a row of the table: " + line);
		}
		Map<Asker, Map<Whose, Outcome>> outcomes = new EnumMap<>(Asker.class);
		for (Asker asker : Asker.values()) {
			outcomes.put(asker, cell(words.get(BEFORE_THE_ASKERS + asker.ordinal())));
		}
		return new WhoMay(words.get(0), words.get(1), words.get(2), outcomes);
	}

	private static Map<Whose, Outcome> cell(String word) {
		String[] parts = word.split("/");
		Map<Whose, Outcome> cell = new EnumMap<>(Whose.class);
		cell.put(Whose.OWN, Outcome.of(parts[0]));
		cell.put(Whose.ANOTHERS, Outcome.of(parts[parts.length - 1]));
		return cell;
	}

	/**
	 * Who asks. All but the first have an account; roles are held in the county asked
	 * about, but for the coordinator of elsewhere.
	 */
	enum Asker {

		ANONYMOUS, VOLUNTEER, VERIFIER, COORDINATOR, ELSEWHERE, ADMINISTRATOR

	}

	/**
	 * Whose thing is asked for.
	 */
	enum Whose {

		OWN, ANOTHERS

	}

	/**
	 * What comes of asking.
	 */
	enum Outcome {

		/** Let through: done, or refused for what is on record and not for who asks. */
		YES("yes", 0),

		SIGN_IN("sign-in", 401),

		NO("no", 403),

		HIDDEN("hidden", 404);

		private final String word;

		private final int status;

		Outcome(String word, int status) {
			this.word = word;
			this.status = status;
		}

		static Outcome of(String word) {
			return Arrays.stream(values())
				.filter((one) -> one.word.equals(word))
				.findFirst()
				.orElseThrow(() -> new IllegalArgumentException("No outcome is called " + word));
		}

		/** Whether the answer is this outcome. */
		boolean is(int answered, String body) {
			return (this == YES) ? letThrough(answered, body) : answered == this.status;
		}

		private static boolean letThrough(int answered, String body) {
			return switch (answered) {
				case 409, 412 -> true;
				// A form comes back filled, with what is wrong.
				case 422 -> body.contains("\"/problems/refused\"") || body.startsWith("<!DOCTYPE html>");
				default -> answered / 100 == 2 || answered / 100 == 3;
			};
		}

		@Override
		public String toString() {
			return this.word;
		}

	}

}

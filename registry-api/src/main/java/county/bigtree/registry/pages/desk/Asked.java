package county.bigtree.registry.pages.desk;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.jspecify.annotations.Nullable;

/**
 * A decision that is asked for on a page.
 *
 * @param about the address of what it is about, beneath that of the API
 * @param here the address of the page
 * @param back the page that led here
 * @param backTitle what that page is called
 * @param seen the present state of what it is about; null where it has none
 * @param facts the present state in words
 * @param choices what may be chosen, by entry: value to label
 * @param words of the county
 * @param closed why there is nothing to decide any more, or null
 */
public record Asked(Decision decision, String about, String here, String back, String backTitle, @Nullable String seen,
		List<Fact> facts, Map<String, Map<String, String>> choices, DeskWords words, @Nullable String closed) {

	Asked(Decision decision, String about, String here, String back, String backTitle, @Nullable String seen,
			List<Fact> facts, Map<String, Map<String, String>> choices, DeskWords words) {
		this(decision, about, here, back, backTitle, seen, facts, choices, words, null);
	}

	/** The same where it is decided already, as the message of the key tells. */
	Asked closedIf(boolean decided, String why) {
		return decided ? new Asked(this.decision, this.about, this.here, this.back, this.backTitle, this.seen,
				this.facts, this.choices, this.words, this.words.say(why)) : this;
	}

	/** The address of the API that decides. */
	String action() {
		return this.about + this.decision.action();
	}

	/** The page on which it is seen once it is made: a case stays before one's eyes. */
	String then() {
		return ((this.decision == Decision.MOVE) ? this.here : this.back) + "?done=" + this.decision.key();
	}

	public Map<String, String> choices(Entry entry) {
		return this.choices.getOrDefault(entry.name(), Map.of());
	}

	public String label(Entry entry) {
		String own = this.words.find("decide." + this.decision.key() + "." + entry.name());
		return (own != null) ? own : this.words.say("decide.entry." + entry.name());
	}

	public @Nullable String hint(Entry entry) {
		String own = this.words.find("decide." + this.decision.key() + "." + entry.name() + ".hint");
		return (own != null) ? own : this.words.find("decide.entry." + entry.name() + ".hint");
	}

	/** What a yes and a no mean. */
	public Map<String, String> yesAndNo(Entry entry) {
		Map<String, String> choices = new LinkedHashMap<>();
		for (String answer : List.of("yes", "no")) {
			choices.put(answer, this.words.say("decide." + this.decision.key() + "." + entry.name() + "." + answer));
		}
		return choices;
	}

	public String title() {
		return this.words.say("decide." + this.decision.key() + ".title");
	}

	public String lede() {
		return this.words.say("decide." + this.decision.key() + ".lede");
	}

	/** What the button that decides says. */
	public String doIt() {
		String own = this.words.find("decide." + this.decision.key() + ".do");
		return (own != null) ? own : this.words.say("decide.do");
	}

	/**
	 * Something that holds at present.
	 *
	 * @param address where more of it stands, or null
	 */
	public record Fact(String label, String value, @Nullable String address) {

		static Fact of(String label, String value) {
			return new Fact(label, value, null);
		}

	}

}

package county.bigtree.registry.pages.desk;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;

import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.pages.form.Plain;
import county.bigtree.registry.problem.Problem;
import org.jspecify.annotations.Nullable;

/**
 * A tree as a coordinator decides on it.
 *
 * @param id its id
 * @param seen its present state
 * @param merged whether it is merged into another, which is then told
 * @param tree what the API tells
 */
record AtTree(String id, @Nullable String seen, boolean merged, Map<String, @Nullable Object> tree) {

	/** Reads it. A merged one is known by its own id alone. */
	static AtTree read(Api api, String tree) {
		Api.Moved moved = api.moved("/trees/{tree}", tree);
		if (moved != null) {
			return new AtTree(tree, moved.seen(), true, Plain.map(api.get("/trees/{tree}", moved.kept())));
		}
		Api.Read read = api.read("/trees/{tree}", tree);
		return new AtTree(read.json().path("id").asString(""), read.seen(), false, Plain.map(read.json()));
	}

	/** The same, or null where it isn't there for the asker. */
	static @Nullable AtTree find(Api api, String tree) {
		try {
			return read(api, tree);
		}
		catch (Problem ex) {
			return null;
		}
	}

	String text(String entry) {
		Object value = this.tree.get(entry);
		return (value instanceof String text) ? text : "";
	}

	public String county() {
		return text("county");
	}

	public String tag() {
		return text("tag");
	}

	boolean is(String entry) {
		return Boolean.TRUE.equals(this.tree.get(entry));
	}

	/** What holds of it at present. */
	List<Asked.Fact> facts(DeskWords words) {
		List<Asked.Fact> facts = new ArrayList<>();
		facts.add(new Asked.Fact(words.say("column.tree"), tag(), is("accepted") ? "/trees/" + tag() : null));
		facts.add(Asked.Fact.of(words.say("column.species"),
				words.species(text("species")) + ", " + words.scientific(text("species"))));
		facts.add(Asked.Fact.of(words.say("tree.condition"), words.say("condition." + text("condition"))));
		facts.add(Asked.Fact.of(words.say("column.points"), standing(words)));
		facts.add(Asked.Fact.of(words.say("tree.place"), place(words)));
		facts.add(Asked.Fact.of(words.say("desk.tree.books"), books(words)));
		return facts;
	}

	private String standing(DeskWords words) {
		if (!(this.tree.get("score") instanceof Map<?, ?> score)) {
			return words.say("tree.unranked");
		}
		String title = text("title");
		return words.say("desk.tree.standing", words.points((BigDecimal) score.get("points")),
				String.valueOf(score.get("rank")),
				title.isEmpty() ? words.say("title.nothing") : words.say("title." + title));
	}

	private String place(DeskWords words) {
		return (this.tree.get("position") instanceof Map<?, ?> position)
				? words.say("tree.place.within", words.number((BigDecimal) position.get("latitude")),
						words.number((BigDecimal) position.get("longitude")),
						words.distance(
								Objects.requireNonNull((BigDecimal) position.get("accuracyMetres")).doubleValue()))
				: words.say("tree.place.none");
	}

	private String books(DeskWords words) {
		if (!is("accepted")) {
			return words.say("desk.tree.waiting");
		}
		return words.say(!is("listed") ? "desk.tree.unlisted"
				: is("eligible") ? "desk.tree.eligible" : "desk.tree.not-eligible");
	}

}

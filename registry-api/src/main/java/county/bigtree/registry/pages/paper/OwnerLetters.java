package county.bigtree.registry.pages.paper;

import java.util.Map;

import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.desk.DeskWords;
import county.bigtree.registry.pages.desk.Desks;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.species.SpeciesCatalogue;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

import org.springframework.stereotype.Component;
import org.springframework.ui.ExtendedModelMap;

/**
 * Fills letters to owners: that their tree won a title or lost it, and why. Other trees
 * are not named: they have owners too.
 */
@Component
class OwnerLetters {

	private static final int PAGE = 100;

	private final Sheets sheets;

	private final Desks desks;

	private final SpeciesCatalogue species;

	OwnerLetters(Sheets sheets, Desks desks, SpeciesCatalogue species) {
		this.sheets = sheets;
		this.desks = desks;
		this.species = species;
	}

	/**
	 * To an owner of the tree that the API told.
	 * @throws Problem where the tree never held a title
	 */
	Map<String, @Nullable Object> of(JsonNode tree, JsonNode owner, Api api, Actor coordinator) {
		String tag = tree.path("tag").asString("");
		Turn turn = lastTurn(tree.path("id").asString(""), api);
		if (turn == null) {
			throw Problem.of(ProblemType.CONFLICT,
					"This tree has never held a title, so there is nothing to write of.");
		}
		String county = tree.path("county").asString("");
		JsonNode where = api.get("/counties/{county}", county);
		DeskWords words = this.desks.open(county, Units.FEET, new ExtendedModelMap());
		Map<String, @Nullable Object> model = this.sheets.begin(this.sheets.say("paper.letter.title", tag),
				this.sheets.say("foot.not-risk"));
		model.put("code", this.sheets.code(tag));
		model.put("practice", where.path("practice").asBoolean(false));
		model.put("tag", tag);
		model.put("name", owner.path("name").asString(""));
		model.put("called", called(owner.path("name").asString("")));
		model.put("contact", owner.path("contact").asString(""));
		model.put("popularName", tree.path("popularName").asString(""));
		model.put("species", this.species.get(tree.path("species").asString("")));
		model.put("county", where.path("name").asString(""));
		model.put("state", where.path("state").asString(""));
		model.put("won", turn.title() != null);
		model.put("held", (turn.title() != null) ? turn.title() : turn.before());
		model.put("why", turn.reason());
		model.put("on", words.day(turn.day()));
		model.put("figures", TreeOnPaper.last(api, tree, words, "paper.certificate.figures"));
		model.put("listed", tree.path("listed").asBoolean(true));
		model.put("placed", tree.hasNonNull("position"));
		model.put("today", words.day(words.today().toString()));
		model.put("coordinator", coordinator.creditName());
		return model;
	}

	/** How one is addressed: families and companies without their article. */
	private static String called(String name) {
		return name.startsWith("The ") ? name.substring("The ".length()) : name;
	}

	/** The last change of a title of the tree that its story tells. */
	private static @Nullable Turn lastTurn(String tree, Api api) {
		Turn last = null;
		JsonNode story = api.get("/trees/{tree}/story?limit={limit}", tree, PAGE);
		while (true) {
			for (JsonNode entry : story.path("items")) {
				for (JsonNode effect : entry.path("effects")) {
					if (effect.path("kind").asString("").startsWith("title-")
							&& effect.path("tree").asString("").equals(tree)) {
						last = Turn.of(entry, effect);
					}
				}
			}
			String next = story.path("next").asString("");
			if (next.isEmpty()) {
				return last;
			}
			story = api.get("/trees/{tree}/story?limit={limit}&cursor={cursor}", tree, PAGE, next);
		}
	}

	/**
	 * A change of title.
	 *
	 * @param title the one it has since; null where it has none
	 */
	private record Turn(String day, @Nullable String before, @Nullable String title, String reason) {

		static Turn of(JsonNode entry, JsonNode effect) {
			return new Turn(entry.path("day").asString(""), text(effect, "titleBefore"), text(effect, "title"),
					effect.path("reason").asString(""));
		}

		private static @Nullable String text(JsonNode effect, String name) {
			return effect.hasNonNull(name) ? effect.path(name).asString("") : null;
		}

	}

}

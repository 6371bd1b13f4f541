package county.bigtree.registry.pages.paper;

import java.util.Map;
import java.util.UUID;

import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.lookup.ReadStemRuling;
import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.desk.DeskWords;
import county.bigtree.registry.pages.desk.Desks;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.rules.RulesReader;
import county.bigtree.registry.species.SpeciesCatalogue;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

import org.springframework.stereotype.Component;
import org.springframework.ui.ExtendedModelMap;

/**
 * Fills field sheets: blank, or about a tree as far as whoever asks may know of it.
 */
@Component
class FieldSheets {

	private final Sheets sheets;

	private final Desks desks;

	private final SpeciesCatalogue species;

	private final RulesReader rules;

	private final ReadStemRuling rulings;

	private final RegisterClock clock;

	FieldSheets(Sheets sheets, Desks desks, SpeciesCatalogue species, RulesReader rules, ReadStemRuling rulings,
			RegisterClock clock) {
		this.sheets = sheets;
		this.desks = desks;
		this.species = species;
		this.rules = rules;
		this.rulings = rulings;
		this.clock = clock;
	}

	Map<String, @Nullable Object> blank() {
		return blank(this.sheets.say("paper.field.title"));
	}

	private Map<String, @Nullable Object> blank(String title) {
		Map<String, @Nullable Object> model = this.sheets.begin(title, this.sheets.say("paper.field.foot"));
		model.put("figures", SheetFigure.ALL);
		model.put("tree", null);
		model.put("slope", null);
		return model;
	}

	/** About the tree that the API told. */
	Map<String, @Nullable Object> filled(JsonNode tree, Api api, @Nullable Actor actor) {
		String county = tree.path("county").asString("");
		DeskWords words = this.desks.open(county, Units.FEET, new ExtendedModelMap());
		String tag = tree.path("tag").asString("");
		Map<String, @Nullable Object> model = blank(this.sheets.say("paper.field.title.of", tag));
		model.put("code", this.sheets.code(tag));
		model.put("tree",
				new TreeOnPaper(tag, this.species.get(tree.path("species").asString("")), words.county(county),
						TreeOnPaper.place(api, tree, words), TreeOnPaper.last(api, tree, words, "paper.field.last"),
						stems(UUID.fromString(tree.path("id").asString("")), words,
								actor != null && actor.isVolunteerIn(county))));
		model.put("slope", this.rules.get(county).at(this.clock.now()).slopeRule().word());
		return model;
	}

	/** A coordinator's own words on it are for the county's people. */
	private @Nullable String stems(UUID tree, DeskWords words, boolean own) {
		return this.rulings.of(tree).map((ruling) -> {
			StringBuilder told = new StringBuilder(words.say("paper.field.stems." + ruling.form()));
			if (ruling.unionHeightFeet() != null) {
				told.append(' ').append(words.say("paper.field.stems.union", words.number(ruling.unionHeightFeet())));
			}
			if (own && ruling.scoredStem() != null) {
				told.append(' ').append(words.say("paper.field.stems.scored", ruling.scoredStem()));
			}
			if (own && ruling.measureAt() != null) {
				told.append(' ').append(words.say("paper.field.stems.at", ruling.measureAt()));
			}
			return told.toString();
		}).orElse(null);
	}

}

package county.bigtree.registry.pages.paper;

import java.util.Map;

import county.bigtree.registry.pages.Units;
import county.bigtree.registry.pages.desk.DeskWords;
import county.bigtree.registry.pages.desk.Desks;
import county.bigtree.registry.pages.form.Api;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.species.SpeciesCatalogue;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

import org.springframework.stereotype.Component;
import org.springframework.ui.ExtendedModelMap;

/**
 * Fills certificates. They name neither owner nor place, so that one may hang them up.
 */
@Component
class Certificates {

	private static final int MOST_SHARING = 100;

	private final Sheets sheets;

	private final Desks desks;

	private final SpeciesCatalogue species;

	Certificates(Sheets sheets, Desks desks, SpeciesCatalogue species) {
		this.sheets = sheets;
		this.desks = desks;
		this.species = species;
	}

	/**
	 * Of the tree that the API told.
	 * @throws Problem where it holds no title, or only one for practice
	 */
	Certificate of(JsonNode tree, Api api) {
		String county = tree.path("county").asString("");
		JsonNode where = api.get("/counties/{county}", county);
		if (!tree.hasNonNull("title") || where.path("practice").asBoolean(false)) {
			throw Problem.notFound("This tree holds no title at present, so there is no certificate of it.");
		}
		DeskWords words = this.desks.open(county, Units.FEET, new ExtendedModelMap());
		String tag = tree.path("tag").asString("");
		int sharing = sharing(tree, api);
		Map<String, @Nullable Object> model = this.sheets.begin(this.sheets.say("paper.certificate.title", tag),
				this.sheets.say("foot.not-risk"));
		model.put("code", this.sheets.code(tag));
		model.put("tag", tag);
		model.put("popularName", tree.path("popularName").asString(""));
		model.put("foundBy", tree.path("foundBy").asString(""));
		model.put("species", this.species.get(tree.path("species").asString("")));
		model.put("county", where.path("name").asString(""));
		model.put("state", where.path("state").asString(""));
		model.put("sharing", sharing);
		model.put("leads", tree.path("title").asString("").equals("champion"));
		model.put("since", words.day(tree.path("titleSince").asString("")));
		model.put("figures", figures(tree, api, words));
		model.put("today", words.day(words.today().toString()));
		return new Certificate(model, tag + "-certificate");
	}

	/** How many hold the title of its species today. */
	private static int sharing(JsonNode tree, Api api) {
		int sharing = 0;
		for (JsonNode title : api
			.get("/counties/{county}/species/{species}/titles?limit={limit}", tree.path("county").asString(""),
					tree.path("species").asString(""), MOST_SHARING)
			.path("items")) {
			sharing += title.path("to").isNull() ? 1 : 0;
		}
		return sharing;
	}

	private static String figures(JsonNode tree, Api api, DeskWords words) {
		String told = TreeOnPaper.last(api, tree, words, "paper.certificate.figures");
		return (told != null) ? told : words.say("tree.unranked");
	}

	/**
	 * A certificate to be set.
	 *
	 * @param name of its file
	 */
	record Certificate(Map<String, @Nullable Object> model, String name) {
	}

}

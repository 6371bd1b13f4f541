package county.bigtree.registry.openness.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import county.bigtree.registry.access.Access;
import county.bigtree.registry.access.Who;
import county.bigtree.registry.http.Cursor;
import county.bigtree.registry.openness.Features;
import county.bigtree.registry.openness.OpenTitle;
import county.bigtree.registry.openness.ReadOpenTitles;
import county.bigtree.registry.openness.ReadOpenTrees;
import county.bigtree.registry.openness.TitleFilter;
import county.bigtree.registry.openness.TreeFilter;
import county.bigtree.registry.problem.Problem;
import io.swagger.v3.oas.annotations.Hidden;
import org.jspecify.annotations.Nullable;

import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/**
 * Trees and titles as features (OGC API - Features - Part 1: Core, 17-069r4, 7.15 and
 * 7.16).
 */
@RestController
@Hidden
class FeaturesController {

	private static final String TREES = "trees";

	private static final String TITLES = "titles";

	private final ReadOpenTrees trees;

	private final ReadOpenTitles titles;

	private final FeatureAnswers answers;

	FeaturesController(ReadOpenTrees trees, ReadOpenTitles titles, FeatureAnswers answers) {
		this.trees = trees;
		this.titles = titles;
		this.answers = answers;
	}

	@GetMapping(path = "/ogc/collections/trees/items", produces = { FeatureLinks.GEO_JSON, FeatureLinks.JSON })
	@Access(Who.ANYONE)
	Map<String, Object> trees(@RequestParam(required = false) @Nullable String limit,
			@RequestParam(required = false) @Nullable String bbox,
			@RequestParam(required = false) @Nullable String datetime,
			@RequestParam(required = false) @Nullable String county,
			@RequestParam(required = false) @Nullable String species,
			@RequestParam(required = false) @Nullable String tag,
			@RequestParam(required = false) @Nullable String title,
			@RequestParam(required = false) @Nullable String condition,
			@RequestParam(required = false) @Nullable String cursor) {
		TreeFilter filter = new TreeFilter(county, species, tag, title, condition, FeaturesAsked.box(bbox),
				FeaturesAsked.interval(datetime));
		int most = FeaturesAsked.limit(limit);
		Cursor after = FeaturesAsked.cursor(TREES, cursor);
		ReadOpenTrees.Page page = (after == null) ? this.trees.first(filter, most)
				: this.trees.next(filter, after.string(0), FeaturesAsked.matched(after), most);
		Map<String, @Nullable Object> asked = asked(limit, bbox, datetime, county, species, tag, title, cursor);
		asked.put("condition", condition);
		String next = page.next();
		return this.answers.page(TREES, page.trees().stream().map(Features::of).toList(), asked, page.matched(),
				(next != null) ? FeaturesAsked.cursor(TREES, next, page.matched()) : null);
	}

	@GetMapping(path = "/ogc/collections/trees/items/{tree}", produces = { FeatureLinks.GEO_JSON, FeatureLinks.JSON })
	@Access(Who.ANYONE)
	Map<String, @Nullable Object> tree(@PathVariable UUID tree) {
		return this.trees.find(tree)
			.map((found) -> this.answers.one(TREES, Features.of(found)))
			.orElseThrow(() -> Problem.notFound("No open tree has this id."));
	}

	@GetMapping(path = "/ogc/collections/titles/items", produces = { FeatureLinks.GEO_JSON, FeatureLinks.JSON })
	@Access(Who.ANYONE)
	Map<String, Object> titles(@RequestParam(required = false) @Nullable String limit,
			@RequestParam(required = false) @Nullable String bbox,
			@RequestParam(required = false) @Nullable String datetime,
			@RequestParam(required = false) @Nullable String county,
			@RequestParam(required = false) @Nullable String species,
			@RequestParam(required = false) @Nullable String tag,
			@RequestParam(required = false) @Nullable String title,
			@RequestParam(required = false) @Nullable String cursor) {
		TitleFilter filter = new TitleFilter(county, species, tag, title, FeaturesAsked.box(bbox),
				FeaturesAsked.interval(datetime));
		int most = FeaturesAsked.limit(limit);
		Cursor after = FeaturesAsked.cursor(TITLES, cursor);
		ReadOpenTitles.Page page = (after == null) ? this.titles.first(filter, most)
				: this.titles.next(filter, after.number(0), FeaturesAsked.matched(after), most);
		Long next = page.next();
		return this.answers.page(TITLES, page.titles().stream().map(OpenTitle::feature).toList(),
				asked(limit, bbox, datetime, county, species, tag, title, cursor), page.matched(),
				(next != null) ? FeaturesAsked.cursor(TITLES, next, page.matched()) : null);
	}

	@GetMapping(path = "/ogc/collections/titles/items/{title}", produces = { FeatureLinks.GEO_JSON, FeatureLinks.JSON })
	@Access(Who.ANYONE)
	Map<String, @Nullable Object> title(@PathVariable String title) {
		return this.titles.find(title)
			.map((found) -> this.answers.one(TITLES, found.feature()))
			.orElseThrow(() -> Problem.notFound("No title has this id."));
	}

	private static Map<String, @Nullable Object> asked(@Nullable String limit, @Nullable String bbox,
			@Nullable String datetime, @Nullable String county, @Nullable String species, @Nullable String tag,
			@Nullable String title, @Nullable String cursor) {
		Map<String, @Nullable Object> asked = new LinkedHashMap<>();
		asked.put("limit", limit);
		asked.put("bbox", bbox);
		asked.put("datetime", datetime);
		asked.put("county", county);
		asked.put("species", species);
		asked.put("tag", tag);
		asked.put("title", title);
		asked.put("cursor", cursor);
		return asked;
	}

}

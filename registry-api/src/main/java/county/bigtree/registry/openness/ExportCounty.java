package county.bigtree.registry.openness;

import java.io.Writer;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

import county.bigtree.registry.csv.SafeCsv;
import county.bigtree.registry.species.Species;
import county.bigtree.registry.species.SpeciesCatalogue;
import county.bigtree.registry.standing.BookKey;
import county.bigtree.registry.standing.ReadStanding;
import county.bigtree.registry.standing.ReadStandings;
import county.bigtree.registry.standing.StandingPage;
import county.bigtree.registry.standing.StandingQuestion;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Writes what is open of a county as one file, page by page and all of it from one
 * snapshot. Give it a file to write to and not a network: it holds a connection of the
 * database until it is done.
 */
@Service
public class ExportCounty {

	private static final int PAGE = 500;

	private static final int ALL_SPECIES = 10_000;

	private final ReadOpenTrees trees;

	private final ReadStandings standings;

	private final ReadStanding standing;

	private final SpeciesCatalogue species;

	private final JsonMapper json;

	ExportCounty(ReadOpenTrees trees, ReadStandings standings, ReadStanding standing, SpeciesCatalogue species,
			JsonMapper json) {
		this.trees = trees;
		this.standings = standings;
		this.standing = standing;
		this.species = species;
		this.json = json;
	}

	/**
	 * The rankings of all species on a day as known at an instant. Trees that are not
	 * listed today keep their line, without what leads to them.
	 */
	@Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
	public void standings(String county, @Nullable LocalDate asOf, @Nullable Instant knownAt, Writer to) {
		Lines lines = new Lines(to).add(CountyInCsv.standingsHead());
		List<String> ranked = this.standings.species(county, "", ALL_SPECIES);
		Map<String, Species> names = this.species.all(ranked);
		for (String key : ranked) {
			BookKey book = new BookKey(county, key);
			StandingQuestion question = new StandingQuestion(asOf, knownAt, null, PAGE);
			while (question != null) {
				StandingPage page = this.standing.read(book, question);
				SafeCsv csv = new SafeCsv();
				page.items().forEach((item) -> CountyInCsv.standing(csv, book, names.get(key), page, item));
				lines.add(csv);
				question = next(question, page);
			}
		}
	}

	private static @Nullable StandingQuestion next(StandingQuestion question, StandingPage page) {
		if (!page.more()) {
			return null;
		}
		StandingPage.Item last = page.items().get(page.items().size() - 1);
		BigDecimal points = last.scored().score().points().toBigDecimal();
		return new StandingQuestion(question.day(), question.knownAt(), new StandingQuestion.After(last.position(),
				last.rank(), points, last.scored().tree(), points.add(last.behindLeader())), PAGE);
	}

	/**
	 * The listed trees.
	 */
	@Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
	public void trees(String county, Writer to) {
		Lines lines = new Lines(to).add(CountyInCsv.treesHead());
		this.trees.each(county, (page) -> {
			SafeCsv csv = new SafeCsv();
			page.forEach((tree) -> CountyInCsv.tree(csv, tree));
			lines.add(csv);
		});
	}

	/**
	 * The score histories of the listed trees.
	 */
	@Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
	public void scores(String county, Writer to) {
		Lines lines = new Lines(to).add(CountyInCsv.scoresHead());
		this.trees.each(county, (page) -> {
			SafeCsv csv = new SafeCsv();
			page.forEach((tree) -> tree.scores().forEach((score) -> CountyInCsv.score(csv, tree, score)));
			lines.add(csv);
		});
	}

	/**
	 * The listed trees as GeoJSON.
	 */
	@Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
	public void geoJson(String county, Writer to) {
		Lines lines = new Lines(to).add("{\"type\":\"FeatureCollection\",\"features\":[");
		Iterator<String> separators = Stream.iterate("\n", (before) -> ",\n").iterator();
		this.trees.each(county, (page) -> page
			.forEach((tree) -> lines.add(separators.next()).add(this.json.writeValueAsString(Features.of(tree)))));
		lines.add("\n]}\n");
	}

}

package county.bigtree.registry.story;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;

import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.standing.BookKey;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Reads what changed of scores.
 */
@Component
class ScoreEffects {

	private static final String LINES = """
			select s.county, s.species, s.tree, t.tag, s.measurement, s.points, s.effective_on, s.ends_on, s.ended,
			  s.recorded_at, s.closed_at, s.withdrawn_at, s.withdrawn
			from score s join tree t on t.id = s.tree
			""";

	private final JdbcClient jdbc;

	ScoreEffects(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	List<StoryEffect> at(StoryOf whose, Collection<Instant> instants) {
		record Ranked(BookKey book, UUID tree) {
		}
		Map<Ranked, List<ScoreLine>> byTree = lines(whose, instants).stream()
			.collect(Collectors.groupingBy((line) -> new Ranked(line.book(), line.tree())));
		return byTree.values()
			.stream()
			.flatMap((lines) -> instants.stream().flatMap((at) -> ScoreChanges.at(at, lines).stream()))
			.toList();
	}

	private List<ScoreLine> lines(StoryOf whose, Collection<Instant> instants) {
		if (whose instanceof StoryOf.OfTree of) {
			return this.jdbc.sql(LINES + "where s.tree in (select tree_family(:tree, 'infinity'))")
				.param("tree", of.tree())
				.query(ScoreLine::of)
				.list();
		}
		BookKey book = ((StoryOf.OfSpecies) whose).book();
		return this.jdbc.sql(LINES + """
				where s.county = :county and s.species = :species and s.tree in (select tree from score
				  where county = :county and species = :species
				    and (recorded_at in (:instants) or closed_at in (:instants) or withdrawn_at in (:instants)))""")
			.param("county", book.county())
			.param("species", book.species())
			.param("instants", instants.stream().map(SqlTime::of).toList())
			.query(ScoreLine::of)
			.list();
	}

}

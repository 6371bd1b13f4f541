package county.bigtree.registry.story;

import java.time.Instant;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

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

	private final Families families;

	private final JdbcClient jdbc;

	ScoreEffects(Families families, JdbcClient jdbc) {
		this.families = families;
		this.jdbc = jdbc;
	}

	/**
	 * What changed at the instants; in a tree's story also for those others of which a
	 * fact is told.
	 */
	List<StoryEffect> at(StoryOf whose, Collection<Instant> instants, List<StoryFact> told) {
		record Ranked(BookKey book, UUID tree) {
		}
		Map<Ranked, List<ScoreLine>> byTree = lines(whose, instants, told).stream()
			.collect(Collectors.groupingBy((line) -> new Ranked(line.book(), line.tree())));
		return byTree.values()
			.stream()
			.flatMap((lines) -> instants.stream().flatMap((at) -> ScoreChanges.at(at, lines).stream()))
			.filter(concerns(whose, told))
			.toList();
	}

	private Predicate<StoryEffect> concerns(StoryOf whose, List<StoryFact> told) {
		if (whose instanceof StoryOf.OfTree of) {
			Set<UUID> family = this.families.of(of.tree());
			return (effect) -> family.contains(effect.tree()) || told.stream()
				.anyMatch((fact) -> fact.recordedAt().equals(effect.at()) && effect.tree().equals(fact.tree()));
		}
		return (effect) -> true;
	}

	private List<ScoreLine> lines(StoryOf whose, Collection<Instant> instants, List<StoryFact> told) {
		if (whose instanceof StoryOf.OfTree of) {
			Set<UUID> trees = new HashSet<>(this.families.of(of.tree()));
			told.stream().flatMap((fact) -> Stream.ofNullable(fact.tree())).forEach(trees::add);
			return this.jdbc.sql(LINES + "where s.tree in (:trees)").param("trees", trees).query(ScoreLine::of).list();
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

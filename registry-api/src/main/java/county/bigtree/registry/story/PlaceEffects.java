package county.bigtree.registry.story;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;

import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.standing.BookKey;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Reads who took and lost first place.
 */
@Component
class PlaceEffects {

	private final Families families;

	private final JdbcClient jdbc;

	PlaceEffects(Families families, JdbcClient jdbc) {
		this.families = families;
		this.jdbc = jdbc;
	}

	/**
	 * The changes of first place that the story tells of, by ranking; of a tree those
	 * that concern it.
	 */
	Map<BookKey, SortedMap<Instant, FirstPlaces.Turn>> turns(StoryOf whose) {
		if (whose instanceof StoryOf.OfSpecies of) {
			return Map.of(of.book(), FirstPlaces.of(runs(of.book(), BigDecimal.ZERO)));
		}
		Set<UUID> family = this.families.of(((StoryOf.OfTree) whose).tree());
		Map<BookKey, SortedMap<Instant, FirstPlaces.Turn>> turns = new HashMap<>();
		lowest(family).forEach((book, least) -> {
			SortedMap<Instant, FirstPlaces.Turn> own = new TreeMap<>(FirstPlaces.of(runs(book, least)));
			own.values().removeIf((turn) -> turn.changed().stream().noneMatch(family::contains));
			turns.put(book, own);
		});
		return turns;
	}

	/**
	 * What changed at the instants.
	 */
	List<StoryEffect> at(StoryOf whose, BookKey book, SortedMap<Instant, FirstPlaces.Turn> turns,
			Collection<Instant> instants) {
		Map<Instant, FirstPlaces.Turn> wanted = new HashMap<>(turns);
		wanted.keySet().retainAll(Set.copyOf(instants));
		Set<UUID> trees = wanted.values()
			.stream()
			.flatMap((turn) -> turn.changed().stream())
			.collect(Collectors.toSet());
		if (whose instanceof StoryOf.OfTree of) {
			trees.retainAll(this.families.of(of.tree()));
		}
		Map<UUID, String> tags = tags(trees);
		return wanted.entrySet()
			.stream()
			.flatMap((turn) -> turn.getValue()
				.changed()
				.stream()
				.filter(tags::containsKey)
				.map((tree) -> StoryEffect.ofPlace(turn.getValue().kind(tree), turn.getKey(), book, tree,
						tags.getOrDefault(tree, ""))))
			.toList();
	}

	private List<FirstPlaces.Run> runs(BookKey book, BigDecimal least) {
		return this.jdbc.sql("""
				select tree, points, recorded_at, least(closed_at, withdrawn_at) as until_at from score
				where county = :county and species = :species and points >= :least
				  and closed_at is distinct from recorded_at""")
			.param("county", book.county())
			.param("species", book.species())
			.param("least", least)
			.query((row, number) -> new FirstPlaces.Run(row.getObject("tree", UUID.class), row.getBigDecimal("points"),
					SqlTime.get(row, "recorded_at"), SqlTime.find(row, "until_at")))
			.list();
	}

	private Map<BookKey, BigDecimal> lowest(Set<UUID> family) {
		Map<BookKey, BigDecimal> lowest = new HashMap<>();
		this.jdbc.sql("""
				select county, species, min(points) as least from score where tree in (:family)
				group by county, species""").param("family", family).query((row) -> {
			lowest.put(new BookKey(row.getString("county"), row.getString("species")), row.getBigDecimal("least"));
		});
		return lowest;
	}

	private Map<UUID, String> tags(Set<UUID> trees) {
		Map<UUID, String> tags = new HashMap<>();
		if (!trees.isEmpty()) {
			this.jdbc.sql("select id, tag from tree where id in (:trees)").param("trees", trees).query((row) -> {
				tags.put(row.getObject("id", UUID.class), row.getString("tag"));
			});
		}
		return tags;
	}

}

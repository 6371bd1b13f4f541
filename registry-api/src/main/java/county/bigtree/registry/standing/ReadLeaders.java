package county.bigtree.registry.standing;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.standing.Lead;
import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.domain.standing.Title;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.rules.CountyRules;
import county.bigtree.registry.rules.RulesReader;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

/**
 * The species of a county today with who holds their titles, or leads where nobody may,
 * in as many statements for a hundred species as for one.
 */
@Service
public class ReadLeaders {

	/**
	 * Down the list, enough to meet the next current tree but in a book of stale ones.
	 */
	private static final int DEEP = 8;

	private final JdbcClient jdbc;

	private final RulesReader rules;

	private final RegisterClock clock;

	ReadLeaders(JdbcClient jdbc, RulesReader rules, RegisterClock clock) {
		this.jdbc = jdbc;
		this.rules = rules;
		this.clock = clock;
	}

	/**
	 * One line a species with ranked trees, in no order.
	 */
	@Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
	public List<Leader> of(String county) {
		CountyRules countyRules = this.rules.get(county);
		LocalDate today = countyRules.day(this.clock.now());
		Rulebook rulebook = countyRules.on(today, this.clock.now());
		Map<String, List<ScoredTree>> rankings = rankings(county);
		Map<String, List<Held>> holders = holders(county);
		List<Leader> leaders = new ArrayList<>();
		this.jdbc.sql("select species, trees from book where county = ? and trees > 0").param(county).query((row) -> {
			String species = row.getString("species");
			List<ScoredTree> ranking = rankings.getOrDefault(species, List.of());
			line(species, row.getInt("trees"), ranking, holders.getOrDefault(species, List.of()))
				.map((leader) -> leader.withLead(Lead.in(ranking, rulebook, today).get(leader.scored().tree()),
						rulebook.admits(species)))
				.ifPresent(leaders::add);
		});
		return withTags(leaders);
	}

	private static Optional<Leader> line(String species, int trees, List<ScoredTree> ranking, List<Held> held) {
		Optional<Held> first = held.stream().filter((one) -> one.title() == Title.CHAMPION).findFirst();
		return ranking.stream()
			.filter((tree) -> first.isEmpty() || first.get().tree().equals(tree.tree()))
			.findFirst()
			.map((tree) -> new Leader(species, trees, null, tree, first.map(Held::since).orElse(null), held.size(),
					null, true));
	}

	/** Of each species the first trees, and its holders where they stand further down. */
	private Map<String, List<ScoredTree>> rankings(String county) {
		Map<String, List<ScoredTree>> rankings = new LinkedHashMap<>();
		this.jdbc
			.sql("""
					select b.species as book, s.* from book b cross join lateral (
					  (select tree, measurement, points, points_u, measured_on, seen_on, lost_on, carried_over, height_from,
					   crown_from, girth_by, height_by, crown_by
					  from score where county = b.county and species = b.species and withdrawn_at is null and ends_on is null
					  order by points desc, tree limit :deep)
					  union
					  select c.tree, c.measurement, c.points, c.points_u, c.measured_on, c.seen_on, c.lost_on, c.carried_over,
					    c.height_from, c.crown_from, c.girth_by, c.height_by, c.crown_by
					  from title_span h join score c on c.tree = h.tree and c.species = b.species and c.withdrawn_at is null
					    and c.ends_on is null
					  where h.county = b.county and h.species = b.species and h.to_at is null) s
					where b.county = :county and b.trees > 0 order by b.species, s.points desc, s.tree""")
			.param("county", county)
			.param("deep", DEEP)
			.query((row) -> {
				rankings.computeIfAbsent(row.getString("book"), (species) -> new ArrayList<>())
					.add(ScoreRows.scored(row));
			});
		return rankings;
	}

	private Map<String, List<Held>> holders(String county) {
		Map<String, List<Held>> holders = new LinkedHashMap<>();
		this.jdbc.sql("""
				select species, tree, title, from_at from title_span where county = ? and to_at is null
				order by species, from_at, tree""").param(county).query((row) -> {
			holders.computeIfAbsent(row.getString("species"), (species) -> new ArrayList<>())
				.add(new Held(row.getObject("tree", UUID.class), Title.of(row.getString("title")),
						SqlTime.get(row, "from_at")));
		});
		return holders;
	}

	private List<Leader> withTags(List<Leader> leaders) {
		if (leaders.isEmpty()) {
			return leaders;
		}
		Map<UUID, String> tags = new LinkedHashMap<>();
		this.jdbc.sql("select id, tag from tree where id in (:trees) and is_listed(id, :now)")
			.param("now", SqlTime.of(this.clock.now()))
			.param("trees", leaders.stream().map((leader) -> leader.scored().tree()).toList())
			.query((row) -> {
				tags.put(row.getObject("id", UUID.class), row.getString("tag"));
			});
		return leaders.stream().map((leader) -> leader.withTag(tags.get(leader.scored().tree()))).toList();
	}

	private record Held(UUID tree, Title title, Instant since) {
	}

	/**
	 * The champion of a species, or who leads its ranking where there is none.
	 *
	 * @param trees how many are ranked
	 * @param tag null where the tree is not listed, at an owner's wish
	 * @param since when the champion's title was recognised; null where there is none
	 * @param holders how many trees share the title
	 * @param lead over the next current tree; null where there is none near
	 * @param eligible whether the rules let trees of the species hold titles
	 */
	public record Leader(String species, int trees, @Nullable String tag, ScoredTree scored, @Nullable Instant since,
			int holders, @Nullable Lead lead, boolean eligible) {

		private Leader withTag(@Nullable String tag) {
			return new Leader(this.species, this.trees, tag, this.scored, this.since, this.holders, this.lead,
					this.eligible);
		}

		private Leader withLead(@Nullable Lead lead, boolean eligible) {
			return new Leader(this.species, this.trees, this.tag, this.scored, this.since, this.holders, lead,
					eligible);
		}

	}

}

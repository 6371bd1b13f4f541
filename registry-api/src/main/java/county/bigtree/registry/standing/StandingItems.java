package county.bigtree.registry.standing;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import county.bigtree.domain.quantity.KnownDay;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.standing.Contention;
import county.bigtree.domain.standing.Lead;
import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.domain.standing.Title;
import county.bigtree.registry.disclosure.Showings;
import county.bigtree.registry.journal.SqlTime;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * Makes the items of a page of a ranking: places, leads, and the figures behind the
 * scores.
 */
final class StandingItems {

	private final JdbcClient jdbc;

	private final Showings showings;

	StandingItems(JdbcClient jdbc, Showings showings) {
		this.jdbc = jdbc;
		this.showings = showings;
	}

	List<StandingPage.Item> of(Ranking ranking, Map<UUID, Title> titles, Map<UUID, Instant> since) {
		List<ScoredTree> page = ranking.page();
		if (page.isEmpty()) {
			return List.of();
		}
		Map<UUID, StandingPage.Figures> figures = figures(page, ranking.asOf());
		Map<UUID, Lead> leads = ranking.leads();
		Contention contention = new Contention(ranking.rulebook());
		StandingQuestion.After after = ranking.after();
		BigDecimal leader = (after != null) ? after.leaderPoints() : page.get(0).score().points().toBigDecimal();
		int position = (after != null) ? after.position() : 0;
		int rank = (after != null) ? after.rank() : 0;
		BigDecimal before = (after != null) ? after.points() : null;
		List<StandingPage.Item> items = new ArrayList<>();
		for (ScoredTree tree : page) {
			BigDecimal points = tree.score().points().toBigDecimal();
			position++;
			rank = (before != null && before.compareTo(points) == 0) ? rank : position;
			before = points;
			StandingPage.Figures own = figures.get(tree.tree());
			if (own == null) {
				throw new IllegalStateException("No figures of measurement " + tree.measurement());
			}
			items.add(new StandingPage.Item(position, rank, tree, own, titles.get(tree.tree()), since.get(tree.tree()),
					contention.stale(tree, ranking.asOf().day()), leader.subtract(points), leads.get(tree.tree()),
					ranking.leadsAll().get(tree.tree())));
		}
		return items;
	}

	private Map<UUID, StandingPage.Figures> figures(List<ScoredTree> page, AsOf asOf) {
		Map<UUID, String> tags = tags(page);
		Map<UUID, Visit> visits = visits(page, asOf);
		return page.stream()
			.collect(Collectors.toMap(ScoredTree::tree, (scored) -> figures(scored, tags.get(scored.tree()), visits)));
	}

	private static StandingPage.Figures figures(ScoredTree scored, @Nullable String tag, Map<UUID, Visit> visits) {
		Visit visit = visit(visits, scored.measurement());
		UUID heightFrom = scored.from().height();
		UUID crownFrom = scored.from().crown();
		Visit height = (heightFrom != null) ? visit(visits, heightFrom) : visit;
		Visit crown = (crownFrom != null) ? visit(visits, crownFrom) : visit;
		return new StandingPage.Figures(tag, KnownDay.parse(visit.measured()),
				Objects.requireNonNull(visit.girthInches()), Objects.requireNonNull(height.heightFeet()),
				(heightFrom != null) ? height.measuredOn() : null, Objects.requireNonNull(crown.crownFeet()),
				(crownFrom != null) ? crown.measuredOn() : null);
	}

	private static Visit visit(Map<UUID, Visit> visits, UUID measurement) {
		Visit visit = visits.get(measurement);
		if (visit == null) {
			throw new IllegalStateException("No figures of measurement " + measurement);
		}
		return visit;
	}

	private Map<UUID, Visit> visits(List<ScoredTree> page, AsOf asOf) {
		Map<UUID, Visit> visits = new HashMap<>();
		this.jdbc
			.sql("""
					select distinct on (m.id) m.id, m.measured_on, known_day(m.measured_on, m.measured_on_known_to) as measured, r.girth_inches, r.height_feet, r.crown_feet
					from measurement m join reduction r on r.measurement = m.id
					where m.id in (:measurements) and r.recorded_at <= :known order by m.id, r.version desc""")
			.param("measurements", page.stream()
				.flatMap((scored) -> Stream.of(scored.measurement(), scored.from().height(), scored.from().crown()))
				.filter(Objects::nonNull)
				.distinct()
				.toList())
			.param("known", SqlTime.of(asOf.knownAt()))
			.query((row) -> {
				visits.put(row.getObject("id", UUID.class),
						new Visit(row.getObject("measured_on", LocalDate.class), row.getString("measured"),
								row.getBigDecimal("girth_inches"), row.getBigDecimal("height_feet"),
								row.getBigDecimal("crown_feet")));
			});
		return visits;
	}

	/** Of those that are listed today, whatever day is asked about. */
	private Map<UUID, String> tags(List<ScoredTree> page) {
		Map<UUID, String> tags = new HashMap<>();
		List<UUID> trees = page.stream().map(ScoredTree::tree).toList();
		this.jdbc.sql("select id, tag from tree where id in (:trees)").param("trees", trees).query((row) -> {
			tags.put(row.getObject("id", UUID.class), row.getString("tag"));
		});
		tags.keySet().removeAll(this.showings.unlisted(trees));
		return tags;
	}

	/**
	 * A visit's day and figures.
	 */
	private record Visit(LocalDate measuredOn, String measured, @Nullable BigDecimal girthInches,
			@Nullable BigDecimal heightFeet, @Nullable BigDecimal crownFeet) {
	}

	/**
	 * A page of a ranking before it is told.
	 *
	 * @param page its trees
	 * @param next the next current tree after them, if any
	 * @param leadsAll the first current tree with the probability that it leads all, if
	 * it is on the page and asked for
	 * @param after where the page before ended, or null
	 */
	record Ranking(List<ScoredTree> page, List<ScoredTree> next, Rulebook rulebook, AsOf asOf,
			Map<UUID, Double> leadsAll, StandingQuestion.@Nullable After after) {

		private Map<UUID, Lead> leads() {
			List<ScoredTree> withNext = new ArrayList<>(this.page);
			withNext.addAll(this.next);
			return Lead.in(withNext, this.rulebook, this.asOf.day());
		}

	}

}

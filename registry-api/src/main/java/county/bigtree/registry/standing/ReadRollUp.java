package county.bigtree.registry.standing;

import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import java.util.UUID;

import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.registry.disclosure.Showings;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.problem.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Ranks the trees of a species over several counties by their points, under the rules of
 * a county that has said nothing else. No titles are kept over counties.
 */
@Service
public class ReadRollUp {

	private static final Rulebook RULES = Rulebook.defaults(Rulebook.BEGINNING);

	private final JdbcClient jdbc;

	private final RegisterClock clock;

	private final StandingItems items;

	ReadRollUp(JdbcClient jdbc, RegisterClock clock, Showings showings) {
		this.jdbc = jdbc;
		this.clock = clock;
		this.items = new StandingItems(jdbc, showings);
	}

	/**
	 * A page of today's ranking.
	 * @param counties their keys, or none for all that are not for practice
	 * @param question the place at which the page begins; its instant is that of the
	 * first page, its day is not asked
	 * @throws Problem where a county is not in the register
	 */
	@Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
	public RollUpPage read(String species, List<String> counties, StandingQuestion question) {
		List<Member> members = members(counties);
		Instant now = this.clock.now();
		Instant pinned = question.knownAt();
		Instant known = (pinned != null) ? pinned : now;
		if (known.isAfter(now)) {
			throw Problem.invalid("#/knownAt", "out-of-range", "knownAt must not be later than now");
		}
		AsOf asOf = new AsOf(day(members, known), known, pinned == null);
		Book book = new Book(species, members.stream().map(Member::key).toList(), asOf);
		StandingQuestion.After after = question.after();
		List<Ranked> rows = ranked(book, (after != null) ? after.last() : null, question.limit() + 1);
		List<Ranked> page = rows.subList(0, Math.min(rows.size(), question.limit()));
		return new RollUpPage(book.counties(), members.stream().anyMatch(Member::practice), asOf, recordedThrough(book),
				total(book), items(book, page, after), rows.size() > page.size());
	}

	private List<Member> members(List<String> keys) {
		if (keys.isEmpty()) {
			return this.jdbc.sql("select key, time_zone, practice from county where not practice order by key")
				.query(Member.class)
				.list();
		}
		List<Member> members = this.jdbc
			.sql("select key, time_zone, practice from county where key in (:keys) order by key")
			.param("keys", keys)
			.query(Member.class)
			.list();
		TreeSet<String> unknown = new TreeSet<>(keys);
		members.forEach((member) -> unknown.remove(member.key()));
		if (!unknown.isEmpty()) {
			throw Problem.invalid("#/counties", "unknown", "No county has the key " + unknown.first() + ".");
		}
		return members;
	}

	private static LocalDate day(List<Member> members, Instant known) {
		return members.stream()
			.map((member) -> LocalDate.ofInstant(known, ZoneId.of(member.timeZone())))
			.max(LocalDate::compareTo)
			.orElse(LocalDate.ofInstant(known, ZoneId.of("UTC")));
	}

	private List<RollUpPage.Item> items(Book book, List<Ranked> page, StandingQuestion.@Nullable After after) {
		Map<UUID, String> counties = new HashMap<>();
		page.forEach((row) -> counties.put(row.scored().tree(), row.county()));
		List<ScoredTree> trees = page.stream().map(Ranked::scored).toList();
		List<ScoredTree> next = trees.isEmpty() ? List.of()
				: ScoresAsOf.nextCurrent(
						(last, batch) -> ranked(book, last, batch).stream().map(Ranked::scored).toList(), book.asOf(),
						trees.get(trees.size() - 1), RULES);
		return this.items
			.of(new StandingItems.Ranking(trees, next, RULES, book.asOf(), Map.of(), after), Map.of(), Map.of())
			.stream()
			.map((place) -> new RollUpPage.Item(Objects.requireNonNull(counties.get(place.scored().tree())), place))
			.toList();
	}

	/**
	 * Takes the first of each county from its own ranking, and of these the first.
	 */
	private List<Ranked> ranked(Book book, @Nullable ScoredTree after, int limit) {
		if (book.counties().isEmpty()) {
			return List.of();
		}
		String seen = (after != null) ? " and (points < :points or (points = :points and tree > :tree))" : "";
		JdbcClient.StatementSpec query = ask(
				"""
						select s.* from county c cross join lateral (
						  select county, tree, measurement, points, points_u, measured_on, seen_on, lost_on, carried_over, height_from,
						    crown_from, girth_by, height_by, crown_by
						  from score where county = c.key and species = :species and\s"""
						+ ScoresAsOf.holds(book.asOf()) + seen + " order by points desc, tree limit :limit) s "
						+ "where c.key in (:counties) order by s.points desc, s.tree limit :limit",
				book)
			.param("limit", limit);
		if (after != null) {
			query = query.param("points", after.score().points().toBigDecimal()).param("tree", after.tree());
		}
		return query.query((row, number) -> new Ranked(row.getString("county"), ScoreRows.scored(row))).list();
	}

	private int total(Book book) {
		return book.counties().isEmpty() ? 0
				: ask("select count(*) from score where county in (:counties) and species = :species and "
						+ ScoresAsOf.holds(book.asOf()), book)
					.query(Integer.class)
					.single();
	}

	private JdbcClient.StatementSpec ask(String sql, Book book) {
		JdbcClient.StatementSpec query = this.jdbc.sql(sql)
			.param("counties", book.counties())
			.param("species", book.species());
		return book.asOf().present() ? query
				: query.param("day", book.asOf().day()).param("known", SqlTime.of(book.asOf().knownAt()));
	}

	private Instant recordedThrough(Book book) {
		if (book.counties().isEmpty()) {
			return book.asOf().knownAt();
		}
		return SqlTime.instant(this.jdbc.sql("""
				select coalesce(max(l.at), :known) from county c cross join lateral (
				  select max(recorded_at) as at from change where county = c.key and recorded_at <= :known) l
				where c.key in (:counties)""")
			.param("counties", book.counties())
			.param("known", SqlTime.of(book.asOf().knownAt()))
			.query(OffsetDateTime.class)
			.single());
	}

	private record Member(String key, String timeZone, boolean practice) {
	}

	private record Book(String species, List<String> counties, AsOf asOf) {
	}

	private record Ranked(String county, ScoredTree scored) {
	}

}

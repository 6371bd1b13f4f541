package county.bigtree.registry.desk;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.domain.standing.Title;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.rules.CountyRules;
import county.bigtree.registry.rules.RulesReader;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Lists the title holders of a county and the trees of the first ranks that are to be
 * measured again: because their measurement will be too old, or because they lost a part
 * since it was taken.
 */
@Service
public class ListDue {

	private static final int FURTHEST_YEARS = 100;

	/**
	 * The rank of a tree is at most 3 exactly if it has as many points as the third of
	 * the list or more.
	 */
	private static final String TOP_TREES = """
			with top as (
			  select s.id from book b cross join lateral (
			    select id from score where county = b.county and species = b.species and withdrawn_at is null
			      and ends_on is null and points >= coalesce((select points from score where county = b.county
			        and species = b.species and withdrawn_at is null and ends_on is null
			        order by points desc, tree offset 2 limit 1), 0)) s
			  where b.county = :county
			  union
			  select s.id from title_span p join score s on s.tree = p.tree and s.withdrawn_at is null and s.ends_on is null
			  where p.county = :county and p.to_at is null)
			select s.tree, t.tag, s.species, p.title, s.measured_on, s.lost_on, s.carried_over,
			  (select count(*) from score o where o.county = s.county and o.species = s.species and o.withdrawn_at is null
			    and o.ends_on is null and o.points > s.points) + 1 as rank
			from top join score s on s.id = top.id join tree t on t.id = s.tree
			left join title_span p on p.tree = s.tree and p.county = s.county and p.species = s.species and p.to_at is null""";

	private final JdbcClient jdbc;

	private final RulesReader rules;

	private final RegisterClock clock;

	ListDue(JdbcClient jdbc, RulesReader rules, RegisterClock clock) {
		this.jdbc = jdbc;
		this.rules = rules;
		this.clock = clock;
	}

	/**
	 * All that is due in a county that was brought up to today, in the order of
	 * {@link Due#ORDER}: every damaged one of these trees, and those whose measurement is
	 * no longer current on the day.
	 * @param before the day, or null for a year from today
	 */
	@Transactional(readOnly = true)
	public List<Due> of(String county, @Nullable LocalDate before) {
		CountyRules countyRules = this.rules.get(county);
		Instant now = this.clock.now();
		LocalDate today = countyRules.day(now);
		LocalDate day = (before != null) ? before : today.plusYears(1);
		LocalDate furthest = today.plusYears(FURTHEST_YEARS);
		if (day.isBefore(Rulebook.BEGINNING) || day.isAfter(furthest)) {
			throw Problem.invalid("#/before", "out-of-range",
					"before must be from %s to %s".formatted(Rulebook.BEGINNING, furthest));
		}
		CurrencyEnds ends = CurrencyEnds.of(countyRules, today, day, now);
		Rulebook rulebook = countyRules.on(today, now);
		return top(county).stream()
			.flatMap((tree) -> tree.due(rulebook, ends, day).stream())
			.sorted(Due.ORDER)
			.toList();
	}

	private List<TopTree> top(String county) {
		return this.jdbc.sql(TOP_TREES).param("county", county).query(ListDue::topTree).list();
	}

	private static TopTree topTree(ResultSet row, int number) throws SQLException {
		String title = row.getString("title");
		return new TopTree(row.getObject("tree", UUID.class), row.getString("tag"), row.getString("species"),
				row.getInt("rank"), (title != null) ? Title.of(title) : null,
				row.getObject("measured_on", LocalDate.class), row.getObject("lost_on", LocalDate.class),
				row.getBoolean("carried_over"));
	}

	private record TopTree(UUID tree, String tag, String species, int rank, @Nullable Title title, LocalDate measuredOn,
			@Nullable LocalDate lostOn, boolean carriedOver) {

		Optional<Due> due(Rulebook rulebook, CurrencyEnds ends, LocalDate before) {
			if (this.lostOn != null) {
				return Optional.of(due(rulebook.remeasureUntil(this.lostOn), Due.Why.DAMAGED));
			}
			return ends.before(before, this.measuredOn, this.carriedOver).map((last) -> due(last, Due.Why.STALE));
		}

		private Due due(LocalDate on, Due.Why why) {
			return new Due(this.tree, this.tag, this.species, this.rank, this.title, this.measuredOn, on, why);
		}

	}

}

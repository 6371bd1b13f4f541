package county.bigtree.registry.transfer;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;

import county.bigtree.domain.standing.TitleReason;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.standing.Standings;
import org.jspecify.annotations.Nullable;

import org.springframework.dao.ConcurrencyFailureException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Takes some trees of a withdrawn import off the books as one change. In each species
 * those with fewest points go first, so that none of them gets a title only to lose it
 * with the next slice.
 */
@Component
class TakeOffSlice {

	private final Journal journal;

	private final Facts facts;

	private final Standings standings;

	private final JdbcClient jdbc;

	TakeOffSlice(Journal journal, Facts facts, Standings standings, JdbcClient jdbc) {
		this.journal = journal;
		this.facts = facts;
		this.standings = standings;
		this.jdbc = jdbc;
	}

	/**
	 * Takes off the next trees.
	 * @return how many those were; 0 once none is left
	 */
	@Transactional
	int takeOff(ImportJob job, int most) {
		List<UUID> trees = next(job, most);
		if (trees.isEmpty()) {
			return 0;
		}
		Set<String> counties = counties(trees);
		Change change = this.journal.open(job.county(), counties);
		if (!next(job, most).equals(trees) || !counties(trees).equals(counties)) {
			throw new ConcurrencyFailureException("Trees of the import were changed meanwhile");
		}
		Withdrawal withdrawal = withdrawal(job);
		trees.forEach((tree) -> this.facts.append(change, FactTable.TAKING_OFF, "tree", tree, "why", "import-withdrawn",
				"by_person", withdrawal.byPerson(), "reason", withdrawal.reason()));
		this.standings.refresh(change, trees, TitleReason.TAKEN_OFF);
		this.journal.close(change, "taken-off", withdrawal.byPerson());
		return trees.size();
	}

	private List<UUID> next(ImportJob job, int most) {
		return this.jdbc.sql("""
				select r.tree from import_row r
				left join score s on s.tree = r.tree and s.withdrawn_at is null and s.ends_on is null
				where r.job = :job and not exists (select from taking_off where tree = r.tree)
				order by s.species, s.points, r.tree limit :most""")
			.param("job", job.id())
			.param("most", most)
			.query(UUID.class)
			.list();
	}

	/**
	 * Where the trees stand, and those into which they are merged: one may have been
	 * moved or merged since the withdrawal.
	 */
	private Set<String> counties(List<UUID> trees) {
		return new HashSet<>(this.jdbc
			.sql("""
					select distinct l.stands_in from tree t cross join lateral (values (t.id), (kept_tree(t.id))) k (tree)
					cross join lateral (select stands_in from location where tree = k.tree order by recorded_at desc limit 1) l
					where t.id in (:trees)""")
			.param("trees", trees)
			.query(String.class)
			.list());
	}

	private Withdrawal withdrawal(ImportJob job) {
		return this.jdbc.sql("select by_person, reason from import_withdrawal where job = ?")
			.param(job.id())
			.query(Withdrawal.class)
			.single();
	}

	/**
	 * Who took the import back, and why.
	 */
	record Withdrawal(UUID byPerson, @Nullable UUID reason) {
	}

}

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
 * Takes some trees of a withdrawn import off the books as one change, or sets aside what
 * it brought to trees that were on them. In each species those with fewest points go
 * first, so that none of them gets a title only to lose it with the next slice.
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
	 * Takes off the next trees, or sets aside what the import brought to them.
	 * @return how many those were; 0 once none is left
	 */
	@Transactional
	int takeOff(ImportJob job, int most) {
		List<Left> left = next(job, most);
		if (left.isEmpty()) {
			return 0;
		}
		List<UUID> trees = left.stream().map(Left::tree).toList();
		Set<String> counties = counties(trees);
		Change change = this.journal.open(job.county(), counties);
		if (!next(job, most).equals(left) || !counties(trees).equals(counties)) {
			throw new ConcurrencyFailureException("Trees of the import were changed meanwhile");
		}
		boolean brought = left.get(0).brought();
		Withdrawal withdrawal = withdrawal(job);
		left.forEach((one) -> append(change, job, one, withdrawal));
		this.standings.refresh(change, trees, brought ? TitleReason.TAKEN_OFF : TitleReason.SET_ASIDE);
		this.journal.close(change, brought ? "taken-off" : "set-aside", withdrawal.byPerson());
		return left.size();
	}

	private void append(Change change, ImportJob job, Left left, Withdrawal withdrawal) {
		if (left.brought()) {
			this.facts.append(change, FactTable.TAKING_OFF, "tree", left.tree(), "why", "import-withdrawn", "by_person",
					withdrawal.byPerson(), "reason", withdrawal.reason());
		}
		this.jdbc.sql("select * from import_figures(?, ?)")
			.params(job.id(), left.tree())
			.query(UUID.class)
			.list()
			.forEach((figures) -> this.facts.append(change, FactTable.SETTING_ASIDE, "measurement", figures,
					"by_person", withdrawal.byPerson(), "reason", withdrawal.reason()));
	}

	/** All of one kind: first trees that the import brought, then others. */
	private List<Left> next(ImportJob job, int most) {
		List<Left> left = this.jdbc.sql("""
				select l.tree, l.brought from import_left(:job) l
				left join score s on s.tree = l.tree and s.withdrawn_at is null and s.ends_on is null
				order by l.brought desc, s.species, s.points, l.tree limit :most""")
			.param("job", job.id())
			.param("most", most)
			.query(Left.class)
			.list();
		return left.stream().filter((one) -> one.brought() == left.get(0).brought()).toList();
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
	 * A tree with which the taking back is not done.
	 *
	 * @param brought whether the import brought the tree itself
	 */
	record Left(UUID tree, boolean brought) {
	}

	/**
	 * Who took the import back, and why.
	 */
	record Withdrawal(UUID byPerson, @Nullable UUID reason) {
	}

}

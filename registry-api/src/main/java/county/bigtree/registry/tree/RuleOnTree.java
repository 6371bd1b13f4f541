package county.bigtree.registry.tree;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.function.LongConsumer;

import county.bigtree.domain.standing.TitleReason;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * A coordinator's rulings on a tree: whether it may be ranked, and how its stems are
 * taken.
 */
@Service
public class RuleOnTree {

	private final TreeDecisions decisions;

	private final JdbcClient jdbc;

	RuleOnTree(TreeDecisions decisions, JdbcClient jdbc) {
		this.decisions = decisions;
		this.jdbc = jdbc;
	}

	/**
	 * Says whether the tree may be ranked.
	 * @param unchanged told the tree's revision under the lock; refuses a stale one
	 */
	@Transactional
	public void eligible(Actor actor, String idOrTag, boolean eligible, String reason, LongConsumer unchanged) {
		TreeDirectory.KnownTree tree = this.decisions.get(actor, idOrTag);
		Change change = this.decisions.open(tree, unchanged);
		this.decisions.append(change, FactTable.ELIGIBILITY, actor, reason, "id", Uuid7.next(), "tree", tree.id(),
				"eligible", eligible);
		this.decisions.close(change, "eligibility-judged", actor, List.of(tree.id()),
				eligible ? TitleReason.ELIGIBLE : TitleReason.INELIGIBLE);
	}

	/**
	 * Rules on a tree's stems. From its day on, what was measured before counts only if
	 * the ruling keeps it.
	 * @param unchanged told the tree's revision under the lock; refuses a stale one
	 */
	@Transactional
	public void stems(Actor actor, String idOrTag, StemRulingBody body, LongConsumer unchanged) {
		TreeDirectory.KnownTree tree = this.decisions.get(actor, idOrTag);
		Change change = this.decisions.open(tree, unchanged);
		LocalDate began = (body.began() != null) ? body.began() : change.today();
		if (began.isAfter(change.today())) {
			throw Problem.invalid("#/began", "out-of-range", "must not be after today, " + change.today());
		}
		UUID ruling = Uuid7.next();
		this.decisions.append(change, FactTable.STEM_RULING, actor, body.reason(), "id", ruling, "tree", tree.id(),
				"form", body.form(), "union_height_feet", body.unionHeightFeet(), "scored_stem",
				this.decisions.keep(change, body.scoredStem()), "measure_at",
				this.decisions.keep(change, body.measureAt()), "began_on", began);
		List<UUID> kept = (body.keeps() != null) ? body.keeps() : List.of();
		for (UUID measurement : kept) {
			requireOf(tree.id(), measurement);
			this.decisions.append(change, FactTable.RULING_KEPT, "ruling", ruling, "measurement", measurement);
		}
		this.decisions.close(change, "stem-ruled", actor, List.of(tree.id()), TitleReason.RULED);
	}

	private void requireOf(UUID tree, UUID measurement) {
		boolean of = this.jdbc.sql("""
				select exists (select from measurement m where m.id = :measurement
				  and kept_tree(measurement_tree(m.id, m.tree)) = :tree)""")
			.param("measurement", measurement)
			.param("tree", tree)
			.query(Boolean.class)
			.single();
		if (!of) {
			throw Problem.invalid("#/keeps", "unknown",
					"must be measurements of this tree, which " + measurement + " is not");
		}
	}

}

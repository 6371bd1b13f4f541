package county.bigtree.registry.standing;

import java.util.UUID;

import county.bigtree.domain.standing.ScoredTree;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Marks the tree at which a page of a ranking ends by the number of a score, which leads
 * nowhere else: a cursor names no tree, because the tree may not be listed.
 */
@Component
public class PageMarks {

	private final JdbcClient jdbc;

	PageMarks(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * The mark of a tree.
	 */
	public long of(ScoredTree scored) {
		return this.jdbc.sql("select min(id) from score where tree = ? and measurement = ?")
			.params(scored.tree(), scored.measurement())
			.query(Long.class)
			.single();
	}

	/**
	 * The tree with this mark.
	 * @throws Problem of a cursor that was not given out
	 */
	public UUID tree(long mark) {
		return this.jdbc.sql("select tree from score where id = ?")
			.param(mark)
			.query(UUID.class)
			.optional()
			.orElseThrow(() -> Problem
				.of(ProblemType.INVALID_PARAMETER,
						"The cursor is not one that this list gave out. Start again without it.")
				.with("parameter", "cursor"));
	}

}

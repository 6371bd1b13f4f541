package county.bigtree.registry.tree;

import java.time.LocalDate;
import java.util.UUID;

import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * What keeps a tree, or what is known of it, from going from one county to another.
 */
@Component
class CountyLine {

	private final TreeDirectory trees;

	private final JdbcClient jdbc;

	CountyLine(TreeDirectory trees, JdbcClient jdbc) {
		this.trees = trees;
		this.jdbc = jdbc;
	}

	/**
	 * Lets the tree go to a county where every day of its measurements, sightings and
	 * stem rulings has begun: else it would be ranked there on a day still to come. Trees
	 * filed for practice stay in counties for practice, and others out of them.
	 * @param today the day in that county
	 */
	void requireMayCross(UUID tree, String from, String to, LocalDate today) {
		requireSameKind(from, to);
		if (this.trees.latestDay(tree).filter((day) -> day.isAfter(today)).isPresent()) {
			throw Problem.of(ProblemType.CONFLICT,
					"The tree was measured, seen or ruled upon on a day that has not begun in that county. Try again then.");
		}
	}

	/**
	 * Refuses two counties of which one is for practice and the other is not.
	 */
	void requireSameKind(String one, String other) {
		boolean crossed = this.jdbc.sql("select count(distinct practice) > 1 from county where key in (?, ?)")
			.params(one, other)
			.query(Boolean.class)
			.single();
		if (crossed) {
			throw Problem.of(ProblemType.CONFLICT, "One of the counties is for practice: its trees stay there.");
		}
	}

}

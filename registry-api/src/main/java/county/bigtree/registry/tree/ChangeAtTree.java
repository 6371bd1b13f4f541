package county.bigtree.registry.tree;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;

import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.ConcurrencyFailureException;
import org.springframework.stereotype.Component;

/**
 * Begins changes to a tree in the county where it stands, and in that of the tree into
 * which it is merged. A tree that another node moved or merged between the look and the
 * lock is left alone, and the request tried again.
 */
@Component
public class ChangeAtTree {

	private final Journal journal;

	private final TreeDirectory trees;

	ChangeAtTree(Journal journal, TreeDirectory trees) {
		this.journal = journal;
		this.trees = trees;
	}

	/**
	 * Begins a change of a tree's own county with something new about it.
	 * @throws Problem of conflict where the tree was merged into another or taken off the
	 * books
	 */
	public Change open(TreeDirectory.KnownTree tree, String... otherCounties) {
		requireKept(tree);
		Change change = openAnyhow(tree, otherCounties);
		if (this.trees.takenOff(tree.id())) {
			throw Problem.of(ProblemType.CONFLICT, "This tree was taken off the books: nothing more is said of it.");
		}
		return change;
	}

	/**
	 * The same about what is on record already, which a merge does not change.
	 */
	public Change openAnyhow(TreeDirectory.KnownTree tree, String... otherCounties) {
		String keptIn = keptIn(tree);
		Set<String> others = new TreeSet<>(List.of(otherCounties));
		others.add(keptIn);
		Change change = this.journal.open(tree.county(), others);
		TreeDirectory.KnownTree now = this.trees.get(tree.id());
		if (!now.county().equals(tree.county()) || !now.kept().equals(tree.kept()) || !keptIn(now).equals(keptIn)) {
			throw new ConcurrencyFailureException("The tree was moved or merged meanwhile");
		}
		return change;
	}

	/**
	 * Leaves alone what belonged to the tree before the change was begun and has gone to
	 * another with a split since, for the request to be tried again.
	 * @param now the tree to which it belongs under the lock
	 */
	public void requireStill(TreeDirectory.KnownTree tree, UUID now) {
		if (!now.equals(tree.id())) {
			throw new ConcurrencyFailureException("What is decided on went to another tree meanwhile");
		}
	}

	/**
	 * Ends a change that was begun here.
	 * @param actor who caused it, or null for the register itself
	 */
	public void close(Change change, String kind, @Nullable UUID actor) {
		this.journal.close(change, kind, actor);
	}

	/**
	 * Refuses a tree that was merged into another.
	 */
	public void requireKept(TreeDirectory.KnownTree tree) {
		if (tree.merged()) {
			throw Problem
				.of(ProblemType.CONFLICT,
						"This tree was found to be " + this.trees.get(tree.kept()).tag() + ": say it of that one.")
				.with("kept", tree.kept());
		}
	}

	private String keptIn(TreeDirectory.KnownTree tree) {
		return tree.merged() ? this.trees.get(tree.kept()).county() : tree.county();
	}

}

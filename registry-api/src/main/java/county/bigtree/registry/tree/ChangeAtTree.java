package county.bigtree.registry.tree;

import java.util.List;

import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.Journal;
import org.springframework.dao.ConcurrencyFailureException;
import org.springframework.stereotype.Component;

/**
 * Begins changes to a tree in the county where it stands. A tree that another node moved
 * between the look and the lock is left alone, and the request tried again.
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
	 * Begins a change of the tree's county.
	 */
	public Change open(TreeDirectory.KnownTree tree) {
		return open(tree, List.of());
	}

	/**
	 * Begins a change of the tree's county that touches another one too.
	 */
	public Change open(TreeDirectory.KnownTree tree, String otherCounty) {
		return open(tree, List.of(otherCounty));
	}

	private Change open(TreeDirectory.KnownTree tree, List<String> others) {
		Change change = this.journal.open(tree.county(), others);
		if (!this.trees.get(tree.id()).county().equals(tree.county())) {
			throw new ConcurrencyFailureException("The tree was moved to another county meanwhile");
		}
		return change;
	}

}

package county.bigtree.registry.story;

import county.bigtree.registry.disclosure.Showings;
import county.bigtree.registry.nomination.NominationBook;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.tree.TreeDirectory;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Finds the tree whose story is asked for. One that never came on the books, was taken
 * off them, or is not listed, is there for its nominator and the county's verifiers only.
 */
@Service
public class FindStoryTree {

	private final TreeDirectory trees;

	private final NominationBook nominations;

	private final Families families;

	private final Showings showings;

	FindStoryTree(TreeDirectory trees, NominationBook nominations, Families families, Showings showings) {
		this.showings = showings;
		this.trees = trees;
		this.nominations = nominations;
		this.families = families;
	}

	/**
	 * The tree with this id or tag.
	 * @throws Problem of not being found
	 */
	@Transactional(readOnly = true)
	public TreeDirectory.KnownTree find(String idOrTag, @Nullable Actor actor) {
		return this.trees.find(idOrTag)
			.filter((tree) -> this.families.onTheBooks(tree.id()) && this.showings.isListed(tree.id())
					|| (actor != null && concerns(tree, actor)))
			.orElseThrow(() -> Problem.notFound("No public tree has this id or tag."));
	}

	private boolean concerns(TreeDirectory.KnownTree tree, Actor actor) {
		return actor.isVerifierIn(tree.county()) || this.nominations.ofTree(tree.id())
			.filter((nomination) -> nomination.nominator().equals(actor.id()))
			.isPresent();
	}

}

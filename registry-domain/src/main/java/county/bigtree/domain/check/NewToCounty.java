package county.bigtree.domain.check;

import java.util.Optional;

/**
 * The first tree of its species in a county that has long known its species. How many of
 * the next trees will be of a species not seen before is estimated by the share of trees
 * on the books that are the only one of theirs (Good, I.J. 1953, Biometrika 40:237-264,
 * after Turing; from memory). Where that is hardly any, the name may be wrong; if it is
 * right, it is what the register looks for. A young register, where new species turn up
 * all the time, asks nothing.
 */
final class NewToCounty implements Check {

	private static final double PERCENT = 100;

	@Override
	public Optional<Finding> look(Filed filed, Known known) {
		String species = filed.species();
		CountyForm form = known.form();
		if (species == null || known.earlier() != null || form.has(TreeName.of(species))) {
			return Optional.empty();
		}
		int trees = form.trees();
		double share = (double) Math.max(form.singles(), 1) / Math.max(trees, 1);
		if (share > Thresholds.NEW_SPECIES) {
			return Optional.empty();
		}
		return Optional.of(Finding.question("new-to-county",
				"None of the %s trees looked at on the books here is a %s, and a new species hardly ever turns up: if the name is right, it is a great find, so please look at it again."
					.formatted(trees, species),
				new Finding.Numbers().with("treesOnTheBooks", (double) trees)
					.with("expectedNewPercent", PERCENT * share))
			.asExtraordinary());
	}

}

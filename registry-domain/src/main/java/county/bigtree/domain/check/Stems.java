package county.bigtree.domain.check;

/**
 * What the checks of stems ask of a filing.
 */
final class Stems {

	private Stems() {
	}

	static boolean isPalm(Filed filed) {
		String species = filed.species();
		return species != null && TreeForms.of(TreeName.of(species)).kind() == TreeKind.PALM;
	}

}

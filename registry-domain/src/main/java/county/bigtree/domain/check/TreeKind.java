package county.bigtree.domain.check;

import java.util.Locale;

/**
 * The kinds of tree whose shapes are compared, and how far trees of one girth differ in
 * height and spread: standard deviations of natural logarithms. They are those left about
 * the table when each of the five cities of {@link Thresholds} was foretold from the four
 * others, rounded up; a palm's are a proposal, for its girth tells little.
 */
enum TreeKind {

	BROADLEAF(new Scatter(0.19, 0.175), new Scatter(0.23, 0.185), new Scatter(0.28, 0.23), new Scatter(0.30, 0.26)),

	CONIFER(new Scatter(0.23, 0.20), new Scatter(0.26, 0.22), new Scatter(0.35, 0.28), new Scatter(0.42, 0.35)),

	PALM(new Scatter(0.50, 0.35), new Scatter(0.50, 0.35), new Scatter(0.50, 0.35), new Scatter(0.50, 0.35));

	private final Scatter inCounty;

	private final Scatter ofSpecies;

	private final Scatter ofGenus;

	private final Scatter ofKind;

	TreeKind(Scatter inCounty, Scatter ofSpecies, Scatter ofGenus, Scatter ofKind) {
		this.inCounty = inCounty;
		this.ofSpecies = ofSpecies;
		this.ofGenus = ofGenus;
		this.ofKind = ofKind;
	}

	static TreeKind of(String word) {
		return valueOf(word.toUpperCase(Locale.ROOT));
	}

	/** Of a species about its own mean in one county. */
	Scatter inCounty() {
		return this.inCounty;
	}

	/** About a figure of the table, by what it was found for. */
	Scatter about(TreeForm.Level level) {
		return switch (level) {
			case SPECIES -> this.ofSpecies;
			case GENUS -> this.ofGenus;
			case KIND -> this.ofKind;
		};
	}

	/**
	 * Standard deviations of natural logarithms.
	 */
	record Scatter(double height, double spread) {
	}

}

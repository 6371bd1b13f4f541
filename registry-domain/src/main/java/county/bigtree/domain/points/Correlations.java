package county.bigtree.domain.points;

import county.bigtree.domain.quantity.Figures;

/**
 * How far the figures of one visit err together, from -1 to 1: not at all unless they
 * share a reading, such as a baseline taped once for height and crown, or a girth that
 * the spokes of the crown were counted from.
 */
public record Correlations(double girthHeight, double girthCrown, double heightCrown) {

	/** Each figure has readings of its own. */
	public static final Correlations NONE = new Correlations(0, 0, 0);

	public Correlations {
		Figures.within("girthHeight", girthHeight, -1, 1, "from -1 to 1");
		Figures.within("girthCrown", girthCrown, -1, 1, "from -1 to 1");
		Figures.within("heightCrown", heightCrown, -1, 1, "from -1 to 1");
	}

	/** The same where height and crown share something more. */
	public Correlations withHeightCrown(double more) {
		return (more == 0) ? this
				: new Correlations(this.girthHeight, this.girthCrown, Math.min(1, this.heightCrown + more));
	}

	/** Of the points, from what each figure contributes to them. */
	double combined(double girth, double height, double crown) {
		double squares = girth * girth + height * height + crown * crown;
		double shared = this.girthHeight * girth * height + this.girthCrown * girth * crown
				+ this.heightCrown * height * crown;
		return Math.sqrt(Math.max(0, squares + 2 * shared));
	}

}

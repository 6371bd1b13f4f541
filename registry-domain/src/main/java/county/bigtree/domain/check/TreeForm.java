package county.bigtree.domain.check;

/**
 * How high and how wide trees of a species, genus or kind are for their girth: ln(figure
 * in feet) = a + b ln C + c (ln C)², C the girth in inches.
 */
record TreeForm(Level level, TreeKind kind, Curve height, Curve spread) {

	/**
	 * What the form was found for, from near to far.
	 */
	enum Level {

		SPECIES, GENUS, KIND

	}

	/**
	 * The coefficients.
	 */
	record Curve(double a, double b, double c) {

		/** Natural logarithm of the figure in feet. */
		double logarithm(double girthInches) {
			double x = Math.log(girthInches);
			return this.a + this.b * x + this.c * x * x;
		}

	}

}

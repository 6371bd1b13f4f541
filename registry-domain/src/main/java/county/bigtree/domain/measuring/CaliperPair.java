package county.bigtree.domain.measuring;

import county.bigtree.domain.quantity.Figures;

/**
 * Girth of a stem from two diameters at right angles, by each of the means in use. The
 * register scores π times the arithmetic mean; the others tell how far apart they lie on
 * a stem that isn't round. All in the unit of the diameters, which are more than zero.
 */
public record CaliperPair(double first, double second) {

	public CaliperPair {
		Figures.positive("first", first);
		Figures.positive("second", second);
	}

	public double arithmeticGirth() {
		return Math.PI * (this.first + this.second) / 2;
	}

	/** Of the circle with the area of the ellipse. */
	public double geometricGirth() {
		return Math.PI * Math.sqrt(this.first * this.second);
	}

	public double quadraticGirth() {
		return Math.PI * Math.sqrt((this.first * this.first + this.second * this.second) / 2);
	}

	/** The perimeter of the ellipse with these axes. */
	public double ellipseGirth() {
		double major = Math.max(this.first, this.second);
		double ratio = Math.min(this.first, this.second) / major;
		return 2 * major * EllipticIntegral.completeSecondKind(1 - ratio * ratio);
	}

}

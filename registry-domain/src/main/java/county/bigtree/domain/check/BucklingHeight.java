package county.bigtree.domain.check;

import county.bigtree.domain.quantity.Figures;
import county.bigtree.domain.quantity.LengthUnit;

/**
 * The height at which a uniform column buckles under its own weight (Greenhill 1881,
 * Proc. Camb. Phil. Soc. 4(2):65-73): H = (q / 16)^(1/3) (E / w)^(1/3) d^(2/3) with q =
 * 9/4 j², where j is the first zero of the Bessel function of order -1/3. Trees stand at
 * about a quarter of it.
 */
public final class BucklingHeight {

	private static final double BESSEL_ZERO = 1.8663508588;

	private static final double CONSTANT = Math.cbrt(9.0 / 4 * BESSEL_ZERO * BESSEL_ZERO / 16);

	private BucklingHeight() {
	}

	/**
	 * In feet.
	 * @param elasticityPascals Young's modulus of the wood
	 * @param weightNewtonsPerCubicMetre of the wood, green
	 */
	public static double feet(double diameterInches, double elasticityPascals, double weightNewtonsPerCubicMetre) {
		double d = LengthUnit.IN.to(LengthUnit.M, Figures.positive("diameterInches", diameterInches));
		double ratio = Figures.positive("elasticityPascals", elasticityPascals)
				/ Figures.positive("weightNewtonsPerCubicMetre", weightNewtonsPerCubicMetre);
		return LengthUnit.M.to(LengthUnit.FT, CONSTANT * Math.cbrt(ratio) * Math.cbrt(d * d));
	}

}

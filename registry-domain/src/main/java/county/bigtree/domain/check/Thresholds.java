package county.bigtree.domain.check;

/**
 * Beyond what each check speaks: the one table of such numbers. "Proposal" is our
 * judgement, no published figure was found. "Tuned" was set on the trees of five cities
 * (Albuquerque, Fort Collins, Indianapolis, Longview, Orlando) of the Urban tree database
 * (McPherson, van Doorn and Peper 2016, USDA Forest Service Research Data Archive,
 * RDS-2016-0005) so that few sound trees are asked about; what that came to on three
 * other cities stands in docs/checks.md.
 */
public final class Thresholds {

	/**
	 * Squared distance of height and spread together from what the girth tells, in
	 * standard deviations squared, beyond which they are odd. Tuned; 2 % of a normal
	 * distribution lie beyond 7.8, but more real trees do.
	 */
	static final double PROPORTIONS = 10.5;

	/** The same for one of the two alone, as rare under a normal distribution. Tuned. */
	static final double ONE_PROPORTION = 7.9;

	/**
	 * A county with so many trees on its books has a distance of its own: it is odd to
	 * lie farther off than all but a few of those trees. Proposal.
	 */
	static final int ODD_OF = 100;

	/** How few, as a share. Tuned. */
	static final double ODD_SHARE = 0.0125;

	/** A county's own distance is never less: 3 % of a normal distribution. Proposal. */
	static final double ODD_LEAST = 7;

	/** And never more, be there ever so many slips on its books. Proposal. */
	static final double ODD_MOST = 20;

	/** From this share of the distance that is odd, another unit is tried out. Tuned. */
	static final double SLIP_FROM = 0.98;

	/** The figures fit in the other unit if they come within this. Tuned. */
	static final double SLIP_TO = 4;

	/**
	 * Standing for a tree more slender than stands unsupported. Wonn and O'Hara 2001,
	 * West. J. Appl. For. 16:87-94, find trees above about 80 unstable (from memory);
	 * that wide a margin is a proposal.
	 */
	static final double SLENDER = 150;

	/**
	 * Thinner stems are staked saplings, which stand at 150 to 300 diameters on city
	 * streets. Tuned.
	 */
	static final double SAPLING_INCHES = 2;

	/** From this diameter on a stem is compared with grown trees. Proposal. */
	static final double SLENDER_FROM_INCHES = 12;

	/** The same for stems of a foot and more. Proposal. */
	static final double SLENDER_GROWN = 90;

	/** Stouter than this is rare but for the oldest trees. Proposal. */
	static final double STOUT = 8;

	/** Young's modulus of green wood, in pascals. Proposal, a round figure. */
	static final double ELASTICITY = 1.0e10;

	/** Weight of green wood of 1000 kg a cubic metre, in newtons. Proposal. */
	static final double GREEN_WEIGHT = 9810;

	/** Of the largest published height of the species. Proposal. */
	static final double HEIGHT_LIMIT = 1.05;

	/** Of the largest published diameter of the species. Proposal. */
	static final double DIAMETER_LIMIT = 1.1;

	/** Times the largest girth or crown of the species on the county's books. Tuned. */
	static final double BY_FAR = 1.4;

	/** Times the largest height, which differs less. Tuned. */
	static final double HEIGHT_BY_FAR = 1.25;

	/** Of so many trees of the species, or the largest says little. Proposal. */
	static final int BY_FAR_OF = 5;

	/**
	 * Where fewer of the next trees than this share may be expected to be of a species
	 * not yet on the books, such a one is asked about. Proposal.
	 */
	static final double NEW_SPECIES = 0.005;

	/** In inches, what bark shed and a tape laid anew make of a girth. Proposal. */
	static final double GIRTH_SLACK = 0.5;

	/**
	 * The widest ring of a year, in inches. Tuned: 99 % of 2,766 trees of known age were
	 * narrower on average over their lives ({@code src/bench/fit-growth.py}), and 99.5 %
	 * of 2,039 trees of the other cities. Half of the trees of species for which silvics
	 * texts give figures grew faster than those, which are of forests.
	 */
	static final double RING_INCHES = 0.62;

	/** Two girths this near, as a share of the larger, may be of one tree. Proposal. */
	static final double SAME_GIRTH = 0.1;

	/**
	 * In metres: places known less well than this say only that it could be. Proposal.
	 */
	static final double WELL_PLACED = 100;

	/** In degrees: who stands at 0, 0 to within this has no fix. Proposal. */
	static final double ZERO = 0.01;

	/**
	 * In minutes: a watch, and a pair who walk from one shadow to the other. Proposal.
	 */
	static final int SUN_MINUTES = 15;

	/** In degrees: a pole out of plumb, and ground that is not quite level. Proposal. */
	static final double SUN_DEGREES = 3;

	/**
	 * Horizontal distance as a share of the height from which a tangent is taken. US Army
	 * TM 5-6675-322-14 and common practice: about as far off as the tree is high.
	 */
	static final double TANGENT_DISTANCE = 1;

	private Thresholds() {
	}

}

package county.bigtree.domain.measuring;

import county.bigtree.domain.quantity.Angle;
import county.bigtree.domain.quantity.DefaultUncertainty;

/**
 * What each instrument is worth where the measurer states no uncertainty: the one table
 * of such numbers. "Luoma 2017" is Luoma and others, "Assessing precision in conventional
 * field measurements of individual tree attributes", Forests 8(2):38: standard deviations
 * between four trained observers. "FIA" is the tolerance for diameters of the Forest
 * Inventory and Analysis core field guide, 0.1 in for each 20 in at 95 %, halved to a
 * standard deviation (from memory). "Proposal" is our judgement: no published figure was
 * found.
 */
final class InstrumentDefaults {

	private static final double INCHES_IN_FOOT = 12;

	/** Luoma 2017: 0.3 cm on the diameter is 0.37 in on the girth; FIA: 0.25 %. */
	static final DefaultUncertainty GIRTH_TAPE = inchesOrShare(0.37, 0.0025);

	/** The same wrap as a tape's, and a pencil mark read to an eighth: proposal. */
	static final DefaultUncertainty STRING = inchesOrShare(0.4, 0.0025);

	/** Proposal: a mark on the stem, its height above ground taped. */
	static final DefaultUncertainty MARK_HEIGHT = feetOrShare(0.05, 0);

	/** Proposal: how far off the stem a top stands, judged from the side. */
	static final DefaultUncertainty TOP_OFFSET = feetOrShare(2, 0.1);

	/** Proposal: what a string stretches or gives between tree and rule, as a share. */
	static final double STRING_STRETCH = 0.002;

	/**
	 * Proposal: a mark carried over from one length of the rule to the next, in inches.
	 */
	static final double STRING_JOIN = 0.05;

	/** Proposal: the end of the string read on the rule. */
	static final DefaultUncertainty STRING_REST = inchesOrShare(0.125, 0);

	/** Proposal: a rule's own length. */
	static final DefaultUncertainty RULE = inchesOrShare(0, 0);

	/** Luoma 2017: 0.3 cm, 1.5 %, the larger. */
	static final DefaultUncertainty DIAMETER = inchesOrShare(0.12, 0.015);

	/** Proposal: the mark read on a Biltmore stick. */
	static final DefaultUncertainty BILTMORE_MARK = inchesOrShare(0.1, 0);

	/** Proposal: the eye's distance from the stick. */
	static final DefaultUncertainty REACH = inchesOrShare(0.5, 0);

	/** Proposal: the shadow's tip is as soft as the sun is wide (0.5 degrees). */
	static final DefaultUncertainty TREE_SHADOW = feetOrShare(1, 0.01);

	/** Proposal: the shadow of a pole or a person. */
	static final DefaultUncertainty REFERENCE_SHADOW = feetOrShare(0.05, 0.005);

	/** Proposal: a pole's or a person's height, a quarter of an inch. */
	static final DefaultUncertainty REFERENCE_HEIGHT = feetOrShare(0.02, 0);

	/** Proposal: a mark on a stick held at arm's length, a sixteenth. */
	static final DefaultUncertainty STICK_MARK = inchesOrShare(0.0625, 0);

	/** Proposal: a distance taped or ranged over open ground. */
	static final DefaultUncertainty DISTANCE = feetOrShare(0.5, 0.005);

	/** Proposal: how nearly arm and stick are equal, as a share (0.5 in of 25 in). */
	static final double EQUAL_ARM_RATIO = 0.0204;

	/** Proposal: eye height above the base. */
	static final DefaultUncertainty BASE_OFFSET = feetOrShare(0.25, 0);

	/** Proposal: the baseline between two stations. */
	static final DefaultUncertainty BASELINE = feetOrShare(0.25, 0.002);

	/** Proposal: a hand clinometer's degree scale. */
	static final double ANGLE_DEGREES = Angle.USUAL_DEGREES;

	/** Proposal: a hand clinometer's percent scale. */
	static final double ANGLE_PERCENT = Angle.USUAL_PERCENT;

	/** Proposal: a telescoping pole, its tip judged from the ground. */
	static final DefaultUncertainty POLE = feetOrShare(0.3, 0.003);

	/** Proposal: the two edges of a crown found by eye above the tape. */
	static final DefaultUncertainty CROWN_AXIS = feetOrShare(1, 0.03);

	/** Proposal: the one edge of a crown at the end of a spoke. */
	static final DefaultUncertainty CROWN_RADIUS = feetOrShare(0.7, 0.03);

	/** Proposal: a figure whose method nobody knows any more. */
	static final DefaultUncertainty STATED = feetOrShare(2.5, 0.05);

	/**
	 * Luoma 2017: heights by four observers differ by 2.9 %; 2.5 ft is a proposal.
	 */
	static final Floor TANGENT = new Floor(2.5, 0.03);

	/** Proposal, after Bragg 2008, South. J. Appl. For. 32:38-43: no offset bias. */
	static final Floor SINE = new Floor(1.5, 0.015);

	/** Proposal. */
	static final Floor TWO_STATION = new Floor(0, 0.04);

	/** Proposal, for shadow, stick and equal arm: no published figure found. */
	static final Floor SIMILAR_TRIANGLES = new Floor(0, 0.05);

	private InstrumentDefaults() {
	}

	private static DefaultUncertainty inchesOrShare(double inches, double share) {
		return (length) -> Math.max(inches, share * Math.abs(length));
	}

	private static DefaultUncertainty feetOrShare(double feet, double share) {
		return inchesOrShare(feet * INCHES_IN_FOOT, share);
	}

	/**
	 * The least standard uncertainty that a method is trusted with: what propagation
	 * can't see, as a top that isn't the top. It holds unless the measurer states an
	 * uncertainty for every entry.
	 *
	 * @param feet at least so many
	 * @param share and at least so much of the height
	 */
	record Floor(double feet, double share) {

		double of(double heightFeet) {
			return Math.max(this.feet, this.share * heightFeet);
		}

	}

}

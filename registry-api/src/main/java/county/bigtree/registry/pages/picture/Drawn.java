package county.bigtree.registry.pages.picture;

/**
 * The size at which pictures are drawn; they scale with the page.
 */
final class Drawn {

	/** Of every picture. */
	static final int WIDTH = 480;

	/** Room for the figures of an upright axis. */
	static final int LEFT = 46;

	/** Room at the right, so that the last label isn't cut. */
	static final int RIGHT = 14;

	private Drawn() {
	}

	/** No picture needs more, and pages stay small. */
	static double tenth(double place) {
		return Math.round(place * 10) / 10.0;
	}

}

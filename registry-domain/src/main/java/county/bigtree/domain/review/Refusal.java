package county.bigtree.domain.review;

/**
 * Why something may not be done.
 *
 * @param detail a sentence for the one who asked
 */
public record Refusal(Ground ground, String detail) {

	/** What kind of refusal it is, which is all a program needs. */
	public enum Ground {

		/** Not as things stand at present; it may be possible at another time. */
		NOT_NOW,

		/** Not by this person. */
		NOT_YOURS,

		/** Not with what was sent. */
		NOT_ENOUGH

	}

}

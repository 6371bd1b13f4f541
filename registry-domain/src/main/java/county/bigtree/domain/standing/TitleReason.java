package county.bigtree.domain.standing;

/**
 * Why a title began or ended.
 */
public enum TitleReason {

	SIGNED_OFF("signed-off"), OVERTAKEN("overtaken"), FELL("fell"), REMOVED("removed"), STALE("stale"), DIED("died"),
	DAMAGED("damaged"), SET_ASIDE("set-aside"), REVOKED("revoked"), RE_IDENTIFIED("re-identified"),
	RELOCATED("relocated"), RULEBOOK("rulebook"), RIVAL_LEFT("rival-left"), PROMOTED("promoted"), DEMOTED("demoted"),

	/**
	 * The tree was seen standing again, which let it contend.
	 */
	SEEN("seen"),

	MERGED("merged"), SPLIT("split"), INELIGIBLE("ineligible"), ELIGIBLE("eligible"),

	/**
	 * A stem ruling decided which of its measurements count.
	 */
	RULED("ruled"),

	/**
	 * Its readings were reduced again by mended formulas.
	 */
	REDUCED_AGAIN("reduced-again"),

	/**
	 * Its species became part of another.
	 */
	FOLDED("folded"),

	/**
	 * It was taken off the books with all that was imported, or filed for practice, with
	 * it.
	 */
	TAKEN_OFF("taken-off"),

	/**
	 * Nothing happened to the tree: the register's own books were put in order.
	 */
	RECOMPUTED("recomputed");

	private final String word;

	TitleReason(String word) {
		this.word = word;
	}

	/**
	 * The word used in answers and records.
	 */
	public String word() {
		return this.word;
	}

}

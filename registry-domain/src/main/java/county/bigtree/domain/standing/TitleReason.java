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

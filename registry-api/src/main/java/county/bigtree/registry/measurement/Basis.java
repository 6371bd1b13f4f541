package county.bigtree.registry.measurement;

/**
 * On what a measurement rests.
 */
public enum Basis {

	/**
	 * Filed by a volunteer; counts once signed off.
	 */
	FILED("filed"),

	/**
	 * A verifier's own, brought by a sign-off.
	 */
	CHECKED("checked"),

	/**
	 * Imported on the word of an older record.
	 */
	CARRIED_OVER("carried-over");

	private final String word;

	Basis(String word) {
		this.word = word;
	}

	/**
	 * The word used in answers and records.
	 */
	public String word() {
		return this.word;
	}

}

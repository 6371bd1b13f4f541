package county.bigtree.domain.standing;

/**
 * What a tree may hold in its species and county.
 */
public enum Title {

	CHAMPION("champion"), CO_CHAMPION("co-champion");

	private final String word;

	Title(String word) {
		this.word = word;
	}

	/**
	 * The word used in answers and records.
	 */
	public String word() {
		return this.word;
	}

	/**
	 * The title with this word.
	 * @throws IllegalArgumentException if there is none
	 */
	public static Title of(String word) {
		for (Title title : values()) {
			if (title.word.equals(word)) {
				return title;
			}
		}
		throw new IllegalArgumentException("No title is called " + word);
	}

}

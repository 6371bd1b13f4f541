package county.bigtree.domain.standing;

import java.util.Optional;

/**
 * The state in which a tree was found.
 */
public enum Condition {

	UPRIGHT("upright"), DECLINING("declining"), DAMAGED("damaged"), DEAD("dead"), FALLEN("fallen"), REMOVED("removed"),
	NOT_FOUND("not-found");

	private final String word;

	Condition(String word) {
		this.word = word;
	}

	/**
	 * The word used in answers and records.
	 */
	public String word() {
		return this.word;
	}

	/**
	 * The condition with this word, or empty.
	 */
	public static Optional<Condition> find(String word) {
		for (Condition condition : values()) {
			if (condition.word.equals(word)) {
				return Optional.of(condition);
			}
		}
		return Optional.empty();
	}

	/**
	 * Whether a tree in this condition stands alive, and so may be ranked.
	 */
	public boolean standing() {
		return this == UPRIGHT || this == DECLINING || this == DAMAGED;
	}

	/**
	 * Whether a report of it says anything about the tree: one that was not found may
	 * stand all the same.
	 */
	public boolean conclusive() {
		return this != NOT_FOUND;
	}

}

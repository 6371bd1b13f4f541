package county.bigtree.registry.visit;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

import county.bigtree.domain.standing.Condition;

/**
 * What came of a visit.
 */
public enum VisitOutcome {

	/** The tree was measured. */
	MEASURED,

	/** It was seen, and not measured. */
	SEEN,

	/** It was looked for in vain. */
	NOT_FOUND,

	/** The owner did not let the verifier in. */
	REFUSED,

	/** Nobody was there to let the verifier in. */
	NO_ANSWER,

	/** It was not safe to go there or to stay. */
	UNSAFE,

	/** The verifier did not get there. */
	NOT_REACHED,

	/** Its verifier no longer verifies: nobody tells it, it comes of their leaving. */
	HANDED_BACK;

	/** As in JSON and in the database. */
	public String code() {
		return name().toLowerCase(Locale.ROOT).replace('_', '-');
	}

	/** Of those that can be told. */
	public static Optional<VisitOutcome> find(String code) {
		return Arrays.stream(values()).filter((one) -> one != HANDED_BACK && one.code().equals(code)).findFirst();
	}

	/**
	 * The condition that the outcome by itself reports.
	 */
	Optional<Condition> reports() {
		return switch (this) {
			case SEEN -> Optional.of(Condition.UPRIGHT);
			case NOT_FOUND -> Optional.of(Condition.NOT_FOUND);
			case MEASURED, REFUSED, NO_ANSWER, UNSAFE, NOT_REACHED, HANDED_BACK -> Optional.empty();
		};
	}

	/**
	 * Whether a report of the condition may come of it.
	 */
	boolean fits(Condition condition) {
		return switch (this) {
			case MEASURED, SEEN -> condition != Condition.NOT_FOUND;
			case NOT_FOUND -> condition == Condition.NOT_FOUND || condition == Condition.REMOVED;
			case REFUSED, NO_ANSWER, UNSAFE, NOT_REACHED -> true;
			case HANDED_BACK -> false;
		};
	}

}

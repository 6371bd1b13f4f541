package county.bigtree.registry.photo;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * What may be decided on a photo, and in which states: a verifier of the county passes or
 * refuses it and takes a pass back, who sent it withdraws it.
 */
public enum Decision {

	PASS("passed", "waiting", "refused"), REFUSE("refused", "waiting"), TAKE_BACK("waiting", "passed"),
	WITHDRAW("withdrawn", "waiting", "passed", "refused");

	private final String to;

	private final Set<String> from;

	Decision(String to, String... from) {
		this.to = to;
		this.from = Set.of(from);
	}

	public static Optional<Decision> find(String word) {
		return Arrays.stream(values()).filter((one) -> one.word().equals(word)).findFirst();
	}

	public String word() {
		return name().toLowerCase(Locale.ROOT).replace('_', '-');
	}

	/** In what state a photo is after it. */
	public String to() {
		return this.to;
	}

	boolean isFor(String status) {
		return this.from.contains(status);
	}

	boolean needsReason() {
		return this == REFUSE || this == TAKE_BACK;
	}

}

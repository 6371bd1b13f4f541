package county.bigtree.registry.measurement;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * A move of a filed remeasurement: from which statuses, and to which.
 */
public enum MeasurementMove {

	ASSIGN(Set.of("filed"), "assigned"), REASSIGN(Set.of("assigned"), "assigned"),
	HAND_BACK(Set.of("assigned"), "filed"), WITHDRAW(Set.of("filed", "assigned"), "withdrawn"),
	REOPEN(Set.of("withdrawn"), "filed");

	private final Set<String> from;

	private final String to;

	MeasurementMove(Set<String> from, String to) {
		this.from = from;
		this.to = to;
	}

	Set<String> from() {
		return this.from;
	}

	String to() {
		return this.to;
	}

	boolean assigns() {
		return this.to.equals("assigned");
	}

	boolean needsReason() {
		return this == HAND_BACK || this == WITHDRAW;
	}

	/**
	 * The word by which it is asked for.
	 */
	public String code() {
		return name().toLowerCase(Locale.ROOT).replace('_', '-');
	}

	public static Optional<MeasurementMove> find(String code) {
		return Arrays.stream(values()).filter((move) -> move.code().equals(code)).findFirst();
	}

}

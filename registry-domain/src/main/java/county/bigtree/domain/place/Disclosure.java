package county.bigtree.domain.place;

import java.util.Arrays;
import java.util.Optional;

/**
 * How much of a tree's place is shown, from least to most. The code is what JSON writes.
 */
public enum Disclosure {

	/** Only which county it stands in. */
	COUNTY("county"),

	/** The centre of a cell of about a kilometre. */
	NEARBY("nearby"),

	/** The place itself, which only the owner can allow. */
	EXACT("exact");

	private final String code;

	Disclosure(String code) {
		this.code = code;
	}

	public String code() {
		return this.code;
	}

	public static Optional<Disclosure> find(String code) {
		return Arrays.stream(values()).filter((disclosure) -> disclosure.code.equals(code)).findFirst();
	}

	/**
	 * The one that shows less: what a coordinator may narrow, and several owners allow.
	 */
	public Disclosure orLess(Disclosure other) {
		return (compareTo(other) <= 0) ? this : other;
	}

	/**
	 * The position as shown; empty for the county alone.
	 */
	public Optional<Position> shown(Position exact) {
		return switch (this) {
			case COUNTY -> Optional.empty();
			case NEARBY -> Optional.of(PublicGrid.shown(exact));
			case EXACT -> Optional.of(exact);
		};
	}

}

package county.bigtree.registry.pages.measure;

import java.util.List;
import java.util.stream.IntStream;

/**
 * One entry of a reading on the desk.
 *
 * @param name as the API calls it
 * @param kind what is typed in
 * @param unit the one proposed
 * @param places how many inputs it has: more than one for a list
 * @param least how many of them must be filled where any is
 * @param needed whether the first of them must be filled
 */
public record FormField(String name, Kind kind, String unit, int places, int least, boolean needed) {

	/** What is typed into an entry. */
	public enum Kind {

		LENGTH, ANGLE, COUNT

	}

	private static final List<String> LENGTHS = List.of("in", "ft", "yd", "cm", "m");

	private static final List<String> ANGLES = List.of("deg", "pct");

	static FormField length(String name, String unit) {
		return new FormField(name, Kind.LENGTH, unit, 1, 1, true);
	}

	static FormField lengths(String name, String unit, int places) {
		return new FormField(name, Kind.LENGTH, unit, places, 1, true);
	}

	static FormField angle(String name) {
		return new FormField(name, Kind.ANGLE, "deg", 1, 1, true);
	}

	static FormField count(String name) {
		return new FormField(name, Kind.COUNT, "", 1, 1, true);
	}

	FormField atLeast(int filled) {
		return new FormField(this.name, this.kind, this.unit, this.places, filled, this.needed);
	}

	FormField optional() {
		return new FormField(this.name, this.kind, this.unit, this.places, this.least, false);
	}

	public boolean list() {
		return this.places > 1;
	}

	/** Units to choose from; none for a count. */
	public List<String> units() {
		return switch (this.kind) {
			case LENGTH -> LENGTHS;
			case ANGLE -> ANGLES;
			case COUNT -> List.of();
		};
	}

	/** The names of its inputs within the figure's part of the form. */
	public List<String> inputs() {
		return list() ? IntStream.rangeClosed(1, this.places).mapToObj((place) -> this.name + "." + place).toList()
				: List.of(this.name);
	}

}

package county.bigtree.registry.openness;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;

import county.bigtree.domain.place.Position;
import county.bigtree.domain.quantity.Figures;

/**
 * A part of the earth between two parallels and two meridians, its edges included. Where
 * the western edge lies east of the eastern one it spans the 180th meridian (RFC 7946,
 * 5.2).
 *
 * @param west in degrees, -180 to 180
 * @param south in degrees, -90 to 90
 * @param east in degrees, -180 to 180
 * @param north in degrees, from south to 90
 */
public record Box(double west, double south, double east, double north) {

	public Box {
		Figures.within("west", west, -180, 180, "from -180 to 180");
		Figures.within("east", east, -180, 180, "from -180 to 180");
		Figures.within("south", south, -90, 90, "from -90 to 90");
		Figures.within("north", north, south, 90, "from the southern edge to 90");
	}

	/**
	 * Reads four numbers, or six of which the heights are passed over (OGC API -
	 * Features, 7.15.3).
	 * @throws IllegalArgumentException where it is neither
	 */
	public static Box parse(String text) {
		List<Double> edges = Arrays.stream(text.split(",", -1)).map(Box::number).toList();
		return switch (edges.size()) {
			case 4 -> new Box(edges.get(0), edges.get(1), edges.get(2), edges.get(3));
			case 6 -> new Box(edges.get(0), edges.get(1), edges.get(3), edges.get(4));
			default -> throw new IllegalArgumentException("it must have four numbers, or six, but has " + edges.size());
		};
	}

	private static double number(String text) {
		try {
			return new BigDecimal(text.strip()).doubleValue();
		}
		catch (NumberFormatException ex) {
			throw new IllegalArgumentException("'" + text + "' is no number", ex);
		}
	}

	public boolean holds(Position position) {
		double longitude = position.longitude();
		boolean between = (this.west <= this.east) ? this.west <= longitude && longitude <= this.east
				: this.west <= longitude || longitude <= this.east;
		return between && this.south <= position.latitude() && position.latitude() <= this.north;
	}

}

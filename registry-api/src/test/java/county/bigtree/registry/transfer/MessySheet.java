package county.bigtree.registry.transfer;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Makes an invented sheet of 300 rows as a county may keep one: lengths written in a
 * dozen ways, names in whatever form, figures missing or impossible. The same every time;
 * {@link #main} prints it. Nothing in it is a real tree, person or place.
 */
final class MessySheet {

	static final int ROWS = 300;

	private static final List<String> NAMES = List.of("Quercus alba", "white oak", "QUERCUS ALBA", "Quercus alba L.",
			"Quercus rubra", "Acer saccharum", "sugar maple");

	private static final List<String> GENERA = List.of("Malus sp.", "Crataegus spp.", "Salix sp.");

	/**
	 * Points of each tree that can be ranked, by its number, from the figures as meant.
	 */
	final Map<String, BigDecimal> points = new LinkedHashMap<>();

	private final List<String> lines = new ArrayList<>(List.of("no,tree,girth,height,spread,owner,phone,seen,pts"));

	MessySheet() {
		for (int row = 0; row < ROWS; row++) {
			add(row);
		}
	}

	public static void main(String[] args) {
		System.out.print(new MessySheet().text());
	}

	String text() {
		return String.join("\r\n", this.lines) + "\r\n";
	}

	/**
	 * In each ten rows, which kinds come is fixed; so it is known how many of each there
	 * are.
	 */
	private void add(int row) {
		int turn = row / 10;
		switch (row % 10) {
			case 0 -> sound(row, GENERA.get(turn % 3), false);
			case 1 -> sound(row, (turn % 3 == 0) ? "Witch's ash" : "Old man oak", false);
			case 2 -> spoilt(row, turn);
			default -> sound(row, NAMES.get(row % NAMES.size()), true);
		}
	}

	private void sound(int row, String name, boolean ranked) {
		int girth = 50 * (1 + row % 4);
		int height = 40 + row % 60;
		int spread = 20 + 4 * (row % 15);
		BigDecimal meant = new BigDecimal(girth + height).add(new BigDecimal(spread).divide(new BigDecimal(4)));
		if (ranked) {
			this.points.put(number(row), meant);
		}
		BigDecimal stated = meant.setScale(0, RoundingMode.HALF_UP).add(new BigDecimal((row % 50 == 3) ? 25 : 0));
		line(number(row), name, inches(girth, row), feet(height, row), feet(spread, row + 1), "Owner " + row % 9,
				"555-01" + (10 + row % 90), (row % 3 == 0) ? "gate locked, ask first" : "", stated.toPlainString());
	}

	private void spoilt(int row, int turn) {
		String no = number(row);
		switch (turn % 10) {
			case 0 -> line(no, "Quercus alba", "", "80", "40", "", "", "", "");
			case 1 -> line(no, "Quercus alba", "100", "tall", "40", "", "", "", "");
			case 2 -> line(no, "Quercus alba", "1,234", "80", "40", "", "", "", "");
			case 3 -> line(no, "Quercus alba", "100", "900", "40", "", "", "", "");
			case 4 -> line(no, "", "100", "80", "40", "", "", "", "");
			case 5 -> line(number(row - 5), "Quercus alba", "100", "80", "40", "", "", "", "");
			case 6 -> line(no, "Quercus alba", "100", "80", "3 rods", "", "", "", "");
			case 7 -> line(no, "Quercus alba", "0", "80", "40", "", "", "", "");
			case 8 -> line("", "Quercus alba", "100", "80", "40", "", "", "", "");
			default -> line(no, "Nobody's elm", "100", "12 ft 14 in", "40", "", "", "", "");
		}
	}

	private static String number(int row) {
		return String.format(Locale.ROOT, "MS%03d", row);
	}

	/** Whole hundredths of a metre, since 50 inches are 1.27 m. */
	private static String inches(int inches, int way) {
		BigDecimal metres = new BigDecimal("0.0254").multiply(new BigDecimal(inches)).setScale(2);
		return switch (way % 8) {
			case 0 -> inches + "\"";
			case 1 -> inches / 12 + "' " + inches % 12 + "\"";
			case 2 -> inches / 12 + " ft " + inches % 12 + " in";
			case 3 -> metres + " m";
			case 4 -> metres.toPlainString().replace('.', ',') + " m";
			case 5 -> metres.movePointRight(2).toPlainString() + "cm";
			case 6 -> inches + " inches";
			default -> Integer.toString(inches);
		};
	}

	private static String feet(int feet, int way) {
		return switch (way % 6) {
			case 0 -> feet + "'";
			case 1 -> feet + " ft.";
			case 2 -> feet + " ft 0 in";
			case 3 -> feet + ",0";
			case 4 -> feet + " feet";
			default -> Integer.toString(feet);
		};
	}

	private void line(String... cells) {
		List<String> quoted = new ArrayList<>();
		for (String cell : cells) {
			quoted.add((cell.contains(",") || cell.contains("\"")) ? "\"" + cell.replace("\"", "\"\"") + "\"" : cell);
		}
		this.lines.add(String.join(",", quoted));
	}

}

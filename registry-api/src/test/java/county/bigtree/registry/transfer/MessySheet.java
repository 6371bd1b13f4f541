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
 * dozen ways, days in eight, some known only to the month or year, two visits in a row,
 * names in whatever form, figures missing or impossible. The same every time;
 * {@link #main} prints it. Nothing in it is a real tree, person or place.
 */
final class MessySheet {

	static final int ROWS = 300;

	private static final List<String> NAMES = List.of("Quercus alba", "white oak", "QUERCUS ALBA", "Quercus alba L.",
			"Quercus rubra", "Acer saccharum", "sugar maple");

	private static final List<String> GENERA = List.of("Malus sp.", "Crataegus spp.", "Salix sp.");

	/**
	 * Points of each tree that can be ranked and is not dead, by its number, from the
	 * figures of its last visit as meant.
	 */
	final Map<String, BigDecimal> points = new LinkedHashMap<>();

	private final List<String> lines = new ArrayList<>(List
		.of("no,tree,day,girth,height,spread,owner,phone,finder,called,state,seen,pts,again,girth 2,height 2,spread 2"));

	private final boolean later;

	MessySheet() {
		this(false);
	}

	/**
	 * Makes the sheet.
	 * @param later as it was kept on: 24 trees more have been measured again
	 */
	MessySheet(boolean later) {
		this.later = later;
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
		int grown = grown(row);
		BigDecimal meant = new BigDecimal(girth + grown + height).add(new BigDecimal(spread).divide(new BigDecimal(4)));
		if (ranked && row % 50 != 4) {
			this.points.put(number(row), meant);
		}
		BigDecimal stated = meant.setScale(0, RoundingMode.HALF_UP).add(new BigDecimal((row % 50 == 3) ? 25 : 0));
		String again = (grown == 0) ? "" : this.later && row / 10 % 5 != 0 ? "May 2016" : "5/2/2015";
		line(number(row), name, day(row), inches(girth, row), feet(height, row), feet(spread, row + 1),
				"Owner " + row % 9, "555-01" + (10 + row % 90), "Finder " + row % 7,
				(row % 20 == 6) ? "The Tree of " + row : "", state(row), (row % 3 == 0) ? "gate locked, ask first" : "",
				stated.toPlainString(), again, (grown == 0) ? "" : (girth + grown) + " in",
				(grown == 0) ? "" : feet(height, row), (grown == 0) ? "" : feet(spread, row));
	}

	/** By how much it had grown when it was measured again; 0 where it was not. */
	private int grown(int row) {
		if (row / 10 % 5 == 0) {
			return 10;
		}
		return (this.later && row % 10 == 7) ? 12 : 0;
	}

	private static String state(int row) {
		return switch (row % 50) {
			case 4 -> "Dead";
			case 5 -> "leafy";
			case 6 -> "Good";
			case 7 -> "fair";
			default -> "";
		};
	}

	/** In half of the ways to the day, in a quarter each to the month and to the year. */
	private static String day(int row) {
		return switch (row % 8) {
			case 0 -> "6/14/2010";
			case 1 -> "2010-06-14";
			case 2 -> "June 2010";
			case 3 -> "2010";
			case 4 -> "14 June 2010";
			case 5 -> "2010-06";
			case 6 -> "Jun. 14, 2010";
			default -> "summer 2010";
		};
	}

	private void spoilt(int row, int turn) {
		String no = number(row);
		switch (turn % 15) {
			case 0 -> plain(no, "Quercus alba", "2010", "", "80", "40");
			case 1 -> plain(no, "Quercus alba", "2010", "100", "tall", "40");
			case 2 -> plain(no, "Quercus alba", "2010", "1,234", "80", "40");
			case 3 -> plain(no, "Quercus alba", "2010", "100", "900", "40");
			case 4 -> plain(no, "", "2010", "100", "80", "40");
			case 5 -> plain(number(row - 5), "Quercus alba", "2010", "100", "80", "40");
			case 6 -> plain(no, "Quercus alba", "2010", "100", "80", "3 rods");
			case 7 -> plain(no, "Quercus alba", "2010", "0", "80", "40");
			case 8 -> plain("", "Quercus alba", "2010", "100", "80", "40");
			case 9 -> plain(no, "Nobody's elm", "2010", "100", "12 ft 14 in", "40");
			case 10 -> plain(no, "Quercus alba", "6/14/10", "100", "80", "40");
			case 11 -> plain(no, "Quercus alba", "c. 2010", "100", "80", "40");
			case 12 -> plain(no, "Quercus alba", "", "100", "80", "40");
			case 13 -> plain(no, "Quercus alba", "2010", "100", "80", "40", "2015", "110", "", "");
			default -> plain(no, "Quercus alba", "6/30/2010", "100", "80", "40", "June 2010", "101", "80", "40");
		}
	}

	private void plain(String no, String tree, String day, String girth, String height, String spread,
			String... again) {
		List<String> cells = new ArrayList<>(List.of(no, tree, day, girth, height, spread, "", "", "", "", "", "", ""));
		cells.addAll((again.length == 0) ? List.of("", "", "", "") : List.of(again));
		line(cells.toArray(String[]::new));
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

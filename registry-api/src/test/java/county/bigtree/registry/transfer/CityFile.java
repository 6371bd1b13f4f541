package county.bigtree.registry.transfer;

import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;

/**
 * The trees of one city as published, and their rankings worked out straight from the
 * file: nothing of the register's own takes part.
 */
final class CityFile {

	private static final double CENTIMETRES_IN_INCH = 2.54;

	private static final double METRES_IN_FOOT = 0.3048;

	final byte[] bytes;

	/** Numbers of the trees whose name is no more than a genus: "Malus sp.". */
	final List<String> genusOnly = new ArrayList<>();

	/** The other trees by species, those with most points first. */
	final Map<String, List<CityTree>> rankings = new TreeMap<>();

	CityFile(String name) throws IOException {
		try (InputStream in = Objects.requireNonNull(CityFile.class.getResourceAsStream("/urban-trees/" + name))) {
			this.bytes = in.readAllBytes();
		}
		List<String> lines = new String(this.bytes, StandardCharsets.UTF_8).lines().toList();
		List<String> header = cells(lines.get(0));
		for (String line : lines.subList(1, lines.size())) {
			CityTree tree = CityTree.of(header, cells(line));
			if (tree.species().endsWith("-sp.")) {
				this.genusOnly.add(tree.number());
			}
			else {
				this.rankings.computeIfAbsent(tree.species(), (key) -> new ArrayList<>()).add(tree);
			}
		}
		this.rankings.values().forEach((trees) -> trees.sort(Comparator.comparing(CityTree::points).reversed()));
	}

	/** How many rows the file has. */
	int rows() {
		return ranked() + this.genusOnly.size();
	}

	int ranked() {
		return this.rankings.values().stream().mapToInt(List::size).sum();
	}

	/** Only the city's name is quoted, and it holds the only comma within a cell. */
	private static List<String> cells(String line) {
		return List.of(line.replace("\"Boise, ID\"", "Boise").split(",", -1));
	}

	/**
	 * A tree of the city.
	 *
	 * @param species the key that the register gives to its name
	 */
	record CityTree(String number, String species, BigDecimal girth, BigDecimal height, BigDecimal crown,
			BigDecimal points) {

		static CityTree of(List<String> header, List<String> cells) {
			double girth = Math.PI * number(header, cells, "DBH (cm)") / CENTIMETRES_IN_INCH;
			double height = number(header, cells, "TreeHt (m)") / METRES_IN_FOOT;
			double crown = number(header, cells, "AvgCdia (m)") / METRES_IN_FOOT;
			String name = cells.get(header.indexOf("ScientificName"));
			return new CityTree(cells.get(header.indexOf("TreeID")), name.toLowerCase(Locale.ROOT).replace(' ', '-'),
					hundredths(girth), hundredths(height), hundredths(crown), hundredths(girth + height + crown / 4));
		}

		private static double number(List<String> header, List<String> cells, String column) {
			return Double.parseDouble(cells.get(header.indexOf(column)));
		}

		private static BigDecimal hundredths(double value) {
			return new BigDecimal(value).setScale(2, RoundingMode.HALF_UP);
		}

	}

}

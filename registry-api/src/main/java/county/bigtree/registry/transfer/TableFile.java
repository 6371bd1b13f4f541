package county.bigtree.registry.transfer;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;

import county.bigtree.registry.problem.Problem;

/**
 * A file that holds a table, whose first row names its columns. Rows without any entry
 * are passed over.
 */
sealed interface TableFile permits CsvFile, XlsxFile {

	/** Where the file stands in the request. */
	String POINTER = "#/file";

	List<String> header();

	/**
	 * Hands over the rows in the order of the file.
	 * @throws Problem where a row can't be read
	 */
	void forEach(Consumer<Row> consumer);

	/**
	 * Counts the rows, and so reads the file to its end.
	 * @throws Problem where a row can't be read
	 */
	default int countRows() {
		int[] rows = new int[1];
		forEach((row) -> rows[0]++);
		return rows[0];
	}

	/**
	 * Reads the header of a file of either form.
	 * @throws Problem where this is no such file
	 */
	static TableFile of(byte[] bytes) {
		return XlsxFile.looksLikeOne(bytes) ? XlsxFile.of(bytes) : CsvFile.of(bytes);
	}

	/**
	 * The names of the columns without space around them.
	 * @throws Problem where there is none, or two are alike
	 */
	static List<String> names(List<String> firstRow) {
		List<String> header = firstRow.stream().map((name) -> name.strip()).toList();
		if (header.stream().allMatch(String::isEmpty)) {
			throw Problem.invalid(POINTER, "missing", "must begin with a row that names the columns");
		}
		Set<String> seen = new HashSet<>();
		for (String name : header) {
			if (!name.isEmpty() && !seen.add(name)) {
				throw Problem.invalid(POINTER, "contradiction", "has two columns called " + name);
			}
		}
		return header;
	}

	/**
	 * A row as it stands in the file.
	 *
	 * @param number as a spreadsheet numbers it: the header is row 1
	 */
	record Row(int number, List<String> cells) {

		public Row {
			cells = List.copyOf(cells);
		}

	}

}

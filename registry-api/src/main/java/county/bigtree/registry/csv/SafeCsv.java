package county.bigtree.registry.csv;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;

import org.apache.commons.csv.CSVFormat;
import org.jspecify.annotations.Nullable;

/**
 * Lines of CSV (RFC 4180, a header first). Cells that a spreadsheet would take for a
 * formula get an apostrophe in front (OWASP, CSV Injection); numbers stay as they are.
 */
public final class SafeCsv {

	private static final String FORMULA = "=+-@\t\r\n";

	private final StringBuilder text = new StringBuilder();

	/** Adds a line; null is an empty cell. */
	public SafeCsv line(@Nullable Object... cells) {
		return line(Arrays.stream(cells).map(SafeCsv::cell).toList());
	}

	/** Adds a line. */
	public SafeCsv line(List<String> cells) {
		this.text.append(CSVFormat.RFC4180.format(cells.stream().map(SafeCsv::harmless).toArray())).append("\r\n");
		return this;
	}

	private static String cell(@Nullable Object value) {
		return (value == null) ? "" : (value instanceof BigDecimal figure) ? figure.toPlainString() : value.toString();
	}

	private static String harmless(String cell) {
		boolean formula = !cell.isEmpty() && FORMULA.indexOf(cell.charAt(0)) >= 0;
		return (formula && !cell.matches("[+-]?[0-9]+(\\.[0-9]+)?")) ? "'" + cell : cell;
	}

	@Override
	public String toString() {
		return this.text.toString();
	}

}

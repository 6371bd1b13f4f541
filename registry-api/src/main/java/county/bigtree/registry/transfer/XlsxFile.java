package county.bigtree.registry.transfer;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import county.bigtree.registry.problem.Problem;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ExcelReaderException;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.jspecify.annotations.Nullable;

/**
 * The first sheet of a workbook (Office Open XML, ECMA-376). Formulas are never worked
 * out: what the workbook holds as their value is taken. Of cells that are merged the
 * first holds the value, and the others none. A day comes out as ISO 8601 writes it.
 */
final class XlsxFile implements TableFile {

	/** As many digits as a spreadsheet keeps of a number (IEEE 754 double). */
	private static final MathContext DIGITS = new MathContext(15);

	private static final Pattern DAY_FORMAT = Pattern.compile("[yYdD]");

	private static final Pattern QUOTED = Pattern.compile("\"[^\"]*\"|\\\\.|\\[[^]]*]");

	private static final ReadingOptions WITH_FORMATS = new ReadingOptions(true, false);

	private final byte[] bytes;

	private final List<String> header;

	private XlsxFile(byte[] bytes, List<String> header) {
		this.bytes = bytes;
		this.header = header;
	}

	/** Whether it begins as a ZIP archive does. */
	static boolean looksLikeOne(byte[] bytes) {
		return bytes.length > 3 && bytes[0] == 'P' && bytes[1] == 'K' && bytes[2] == 3 && bytes[3] == 4;
	}

	/**
	 * Looks at the archive and reads the header.
	 * @throws Problem where this is no workbook, or one that is not to be opened
	 */
	static XlsxFile of(byte[] bytes) {
		WorkbookGuard.check(bytes);
		List<List<String>> first = new ArrayList<>();
		read(bytes, (rows) -> {
			if (rows.hasNext()) {
				first.add(cells(rows.next()));
			}
		});
		return new XlsxFile(bytes, TableFile.names(first.isEmpty() ? List.of() : first.get(0)));
	}

	@Override
	public List<String> header() {
		return this.header;
	}

	@Override
	public void forEach(Consumer<Row> consumer) {
		read(this.bytes, (rows) -> {
			if (rows.hasNext()) {
				rows.next();
			}
			while (rows.hasNext()) {
				org.dhatim.fastexcel.reader.Row row = rows.next();
				List<String> cells = fitted(cells(row));
				if (!cells.stream().allMatch(String::isBlank)) {
					consumer.accept(new Row(row.getRowNum(), cells));
				}
			}
		});
	}

	/** A sheet leaves out what is empty at the end of a row. */
	private List<String> fitted(List<String> cells) {
		List<String> fitted = new ArrayList<>(cells);
		while (fitted.size() < this.header.size()) {
			fitted.add("");
		}
		while (fitted.size() > this.header.size() && fitted.get(fitted.size() - 1).isBlank()) {
			fitted.remove(fitted.size() - 1);
		}
		return fitted;
	}

	private static void read(byte[] bytes, Consumer<Iterator<org.dhatim.fastexcel.reader.Row>> reader) {
		try (ReadableWorkbook workbook = open(bytes);
				Stream<org.dhatim.fastexcel.reader.Row> rows = workbook.getFirstSheet().openStream()) {
			reader.accept(new Rows(rows.iterator()));
		}
		catch (IOException | ExcelReaderException ex) {
			throw unreadable();
		}
	}

	private static ReadableWorkbook open(byte[] bytes) throws IOException {
		try {
			return new ReadableWorkbook(new ByteArrayInputStream(bytes), WITH_FORMATS);
		}
		catch (ExcelReaderException ex) {
			// A workbook needs no styles (ECMA-376, 12.3.20), but the reader of formats
			// does.
			return new ReadableWorkbook(new ByteArrayInputStream(bytes));
		}
	}

	private static Problem unreadable() {
		return Problem.invalid(POINTER, "wrong-form", "must be a workbook whose first sheet can be read");
	}

	private static List<String> cells(org.dhatim.fastexcel.reader.Row row) {
		List<String> cells = new ArrayList<>();
		for (int column = 0; column < row.getCellCount(); column++) {
			cells.add(text(row.getOptionalCell(column).orElse(null)));
		}
		return cells;
	}

	/**
	 * What a damaged sheet does to the reader is the file's fault.
	 */
	private record Rows(
			Iterator<org.dhatim.fastexcel.reader.Row> rows) implements Iterator<org.dhatim.fastexcel.reader.Row> {

		@Override
		public boolean hasNext() {
			try {
				return this.rows.hasNext();
			}
			catch (RuntimeException ex) {
				throw unreadable();
			}
		}

		@Override
		public org.dhatim.fastexcel.reader.Row next() {
			return this.rows.next();
		}

	}

	/**
	 * A sheet keeps a day as a number, and only its format tells: a month and a year, or
	 * a day, outside of what the format quotes (ECMA-376, 18.8.31).
	 */
	private static boolean isDay(Cell cell) {
		String format = cell.getDataFormatString();
		return format != null && cell.getRawValue() != null
				&& DAY_FORMAT.matcher(QUOTED.matcher(format).replaceAll("")).find();
	}

	private static String plain(BigDecimal number) {
		return (number.signum() == 0) ? "0" : number.stripTrailingZeros().toPlainString();
	}

	private static String text(@Nullable Cell cell) {
		if (cell == null || cell.getType() == CellType.EMPTY) {
			return "";
		}
		if (cell.getValue() instanceof BigDecimal number) {
			return isDay(cell) ? cell.asDate().toLocalDate().toString() : plain(number.round(DIGITS));
		}
		String text = cell.getText();
		return (text != null) ? text.replace("\0", "") : "";
	}

}

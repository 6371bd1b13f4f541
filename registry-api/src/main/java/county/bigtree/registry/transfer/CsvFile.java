package county.bigtree.registry.transfer;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Iterator;
import java.util.List;
import java.util.function.Consumer;

import county.bigtree.registry.problem.Problem;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * A file of comma-separated values (RFC 4180) in UTF-8, with or without a byte order
 * mark, whose first row names its columns. Rows without any entry are passed over.
 */
final class CsvFile implements TableFile {

	private static final String BYTE_ORDER_MARK = "\uFEFF";

	private final String text;

	private final List<String> header;

	private CsvFile(String text, List<String> header) {
		this.text = text;
		this.header = header;
	}

	/**
	 * Reads the header.
	 * @throws Problem where this is no such file
	 */
	static CsvFile of(byte[] bytes) {
		String decoded = decode(bytes);
		String text = decoded.startsWith(BYTE_ORDER_MARK) ? decoded.substring(1) : decoded;
		try (CSVParser parser = parse(text)) {
			Iterator<CSVRecord> records = parser.iterator();
			List<String> header = TableFile.names(records.hasNext() ? records.next().toList() : List.of());
			return new CsvFile(text, header);
		}
		catch (IOException | UncheckedIOException ex) {
			throw unreadable(ex);
		}
	}

	@Override
	public List<String> header() {
		return this.header;
	}

	@Override
	public void forEach(Consumer<Row> consumer) {
		try (CSVParser parser = parse(this.text)) {
			for (CSVRecord one : parser) {
				List<String> cells = one.toList();
				if (one.getRecordNumber() > 1 && !cells.stream().allMatch(String::isBlank)) {
					consumer.accept(new Row((int) one.getRecordNumber(), cells));
				}
			}
		}
		catch (IOException | UncheckedIOException ex) {
			throw unreadable(ex);
		}
	}

	private static CSVParser parse(String text) throws IOException {
		return CSVParser.parse(new StringReader(text), CSVFormat.RFC4180);
	}

	private static String decode(byte[] bytes) {
		try {
			String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
			if (text.indexOf('\0') >= 0) {
				throw Problem.invalid(POINTER, "wrong-form", "must be text: it holds a zero character");
			}
			return text;
		}
		catch (CharacterCodingException ex) {
			throw Problem.invalid(POINTER, "wrong-form", "must be text in UTF-8");
		}
	}

	private static Problem unreadable(Exception cause) {
		return Problem.invalid(POINTER, "wrong-form",
				"must be comma-separated values, quoted as RFC 4180 says: " + cause.getMessage());
	}

}

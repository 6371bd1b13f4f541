package county.bigtree.registry.transfer;

import java.io.InputStream;
import java.util.regex.Pattern;

import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

import com.fasterxml.aalto.stax.InputFactoryImpl;
import county.bigtree.registry.problem.Problem;
import org.jspecify.annotations.Nullable;

/**
 * Looks where a part of a workbook puts its cells. Whoever reads a row makes room for all
 * columns up to its last cell, so that one cell far out would take all memory.
 */
final class CellAddresses {

	/** Our judgement, no source: some ten times what a list of trees has. */
	static final int MOST_COLUMNS = 702;

	/** Columns A to ZZ, which are {@link #MOST_COLUMNS}. */
	private static final Pattern NEAR = Pattern.compile("\\$?[A-Za-z]{1,2}\\$?[0-9]{1,7}");

	/** As many rows as a sheet can have (ECMA-376, 18.3.1.73). */
	private static final int MOST_ROWS = 1_048_576;

	private static final XMLInputFactory FACTORY = factory();

	private CellAddresses() {
	}

	/**
	 * Reads the part as far as it is XML.
	 * @throws Problem where a cell stands too far out
	 */
	static void check(InputStream part) {
		try {
			XMLStreamReader reader = FACTORY.createXMLStreamReader(part);
			int cells = 0;
			while (reader.hasNext()) {
				int event = reader.next();
				if (event == XMLStreamConstants.START_ELEMENT && reader.getLocalName().equals("row")) {
					cells = 0;
					checkRow(reader.getAttributeValue(null, "r"));
				}
				else if (event == XMLStreamConstants.START_ELEMENT && reader.getLocalName().equals("c")) {
					checkCell(reader.getAttributeValue(null, "r"), ++cells);
				}
			}
		}
		catch (XMLStreamException | IllegalArgumentException ex) {
			// The workbook is read by the same means, and no further than this.
			return;
		}
	}

	private static void checkRow(@Nullable String number) {
		if (number != null && !(number.matches("[0-9]{1,7}") && Integer.parseInt(number) <= MOST_ROWS)) {
			throw tooFar();
		}
	}

	/** A cell without an address stands beside the one before. */
	private static void checkCell(@Nullable String address, int cells) {
		if ((address != null) ? !NEAR.matcher(address).matches() : cells > MOST_COLUMNS) {
			throw tooFar();
		}
	}

	private static Problem tooFar() {
		return Problem.invalid(TableFile.POINTER, "wrong-form",
				"has cells beyond column %d (ZZ) or row %d".formatted(MOST_COLUMNS, MOST_ROWS));
	}

	private static XMLInputFactory factory() {
		XMLInputFactory factory = new InputFactoryImpl();
		factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
		factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
		return factory;
	}

}

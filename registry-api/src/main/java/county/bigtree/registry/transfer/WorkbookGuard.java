package county.bigtree.registry.transfer;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.Locale;

import county.bigtree.registry.problem.Problem;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;

/**
 * Looks through a workbook before it is opened: refuses one that unpacks to more than a
 * list of trees can be, that carries macros, has cells where no list has any, or whose
 * XML brings a document type, through which an XML reader could be led astray (OWASP, XML
 * External Entity Prevention).
 */
final class WorkbookGuard {

	/** Our judgement, no source: some three times what a sheet of 100,000 trees takes. */
	static final long MOST_BYTES = 100_000_000;

	static final int MOST_PARTS = 1000;

	private WorkbookGuard() {
	}

	/**
	 * Unpacks the archive without keeping anything, by the same means by which the
	 * workbook is opened, so that both find the same parts.
	 * @throws Problem which says what is wrong with it
	 */
	static void check(byte[] workbook) {
		long bytes = 0;
		int parts = 0;
		boolean sheet = false;
		try (ZipFile zip = ZipFile.builder().setByteArray(workbook).get()) {
			for (ZipArchiveEntry part : Collections.list(zip.getEntries())) {
				String name = part.getName().toLowerCase(Locale.ROOT);
				sheet |= name.equals("xl/workbook.xml");
				refuseMacros(name);
				if (++parts > MOST_PARTS) {
					throw refused("has more than %d parts".formatted(MOST_PARTS));
				}
				try (InputStream in = zip.getInputStream(part)) {
					bytes += unpack(in, MOST_BYTES - bytes, name.equals("[content_types].xml"));
				}
				try (InputStream in = zip.getInputStream(part)) {
					CellAddresses.check(in);
				}
			}
		}
		catch (IOException | IllegalArgumentException ex) {
			throw refused("is damaged: it can't be unpacked");
		}
		if (!sheet) {
			throw refused("must be comma-separated values or a workbook (XLSX)");
		}
	}

	private static void refuseMacros(String name) {
		if (name.endsWith("vbaproject.bin") || name.startsWith("xl/macrosheets/")) {
			throw refused("has macros: save it as a workbook without");
		}
	}

	/** Answers how many bytes the part holds. */
	private static long unpack(InputStream in, long most, boolean types) throws IOException {
		byte[] buffer = new byte[65_536];
		long bytes = 0;
		for (int read = in.readNBytes(buffer, 0, buffer.length); read > 0; read = in.readNBytes(buffer, 0,
				buffer.length)) {
			if (bytes == 0) {
				refuseDocumentType(buffer, read);
			}
			if (types && latin(buffer, read).contains("macroenabled")) {
				throw refused("has macros: save it as a workbook without");
			}
			bytes += read;
			if (bytes > most) {
				throw refused("unpacks to more than %d MB".formatted(MOST_BYTES / 1_000_000));
			}
		}
		return bytes;
	}

	/** Zeros are left out, so that it is found in UTF-16 too. */
	private static void refuseDocumentType(byte[] buffer, int read) {
		if (latin(buffer, read).replace("\0", "").contains("<!doctype")) {
			throw refused("has a document type, which no workbook needs");
		}
	}

	private static String latin(byte[] buffer, int read) {
		return new String(buffer, 0, read, StandardCharsets.ISO_8859_1).toLowerCase(Locale.ROOT);
	}

	private static Problem refused(String detail) {
		return Problem.invalid(TableFile.POINTER, "wrong-form", detail);
	}

}

package county.bigtree.registry.transfer;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

import county.bigtree.registry.problem.Problem;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

/**
 * Workbooks as a spreadsheet saves them, and such as are not to be opened.
 */
class XlsxFileTest {

	@Test
	void readsTheFirstSheetAsItStands() throws IOException {
		TableFile file = TableFile.of(workbook());
		assertThat(file.header()).containsExactly("no", "name", "girth", "note");
		List<TableFile.Row> rows = new ArrayList<>();
		file.forEach(rows::add);
		assertThat(rows).containsExactly(new TableFile.Row(2, List.of("7", "Quercus alba", "100.5", "")),
				new TableFile.Row(4, List.of("8", "", "0.3", "ends")),
				new TableFile.Row(5, List.of("9", "", "", "", "beyond")));
		assertThat(file.countRows()).isEqualTo(3);
	}

	@Test
	void refusesMacros() throws IOException {
		assertRefused(Map.of("xl/workbook.xml", "<workbook/>", "xl/vbaProject.bin", "x"), "has macros");
		assertRefused(Map.of("xl/workbook.xml", "<workbook/>", "xl/macrosheets/sheet1.xml", "<x/>"), "has macros");
		assertRefused(Map.of("xl/workbook.xml", "<workbook/>", "[Content_Types].xml",
				"<Types ContentType='application/vnd.ms-excel.sheet.macroEnabled.main+xml'/>"), "has macros");
	}

	@Test
	void refusesWhatUnpacksToTooMuch() throws IOException {
		ByteArrayOutputStream bytes = new ByteArrayOutputStream();
		try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
			zip.putNextEntry(new ZipEntry("xl/workbook.xml"));
			byte[] zeros = new byte[1_000_000];
			for (long written = 0; written <= WorkbookGuard.MOST_BYTES; written += zeros.length) {
				zip.write(zeros);
			}
		}
		assertThat(bytes.size()).isLessThan(1_000_000);
		assertRefused(bytes.toByteArray(), "unpacks to more than 100 MB");
	}

	@Test
	void refusesMoreThanSoManyParts() throws IOException {
		ByteArrayOutputStream bytes = new ByteArrayOutputStream();
		try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
			for (int part = 0; part <= WorkbookGuard.MOST_PARTS; part++) {
				zip.putNextEntry(new ZipEntry("xl/part" + part));
			}
		}
		assertRefused(bytes.toByteArray(), "has more than 1000 parts");
	}

	@Test
	void refusesDocumentTypes() throws IOException {
		assertRefused(Map.of("xl/workbook.xml", "<!DOCTYPE x [<!ENTITY a 'b'>]><workbook>&a;</workbook>"),
				"document type");
	}

	@Test
	void refusesWhatIsNoWorkbook() throws IOException {
		assertRefused(Map.of("readme.txt", "nothing"), "must be comma-separated values or a workbook");
		assertRefused(Map.of("xl/workbook.xml", "<workbook"), "first sheet can be read");
		assertRefused("PK\u0003\u0004nothing more".getBytes(StandardCharsets.ISO_8859_1), "");
	}

	/**
	 * With a row left out, a number that binary fractions can't hold, and a cell beyond
	 * the header.
	 */
	private static byte[] workbook() throws IOException {
		ByteArrayOutputStream bytes = new ByteArrayOutputStream();
		try (Workbook workbook = new Workbook(bytes, "test", "1.0")) {
			Worksheet sheet = workbook.newWorksheet("trees");
			List.of("no", " name ", "girth", "note").forEach((name) -> sheet.value(0, sheet(name), name));
			sheet.value(1, 0, 7);
			sheet.value(1, 1, "Quercus alba");
			sheet.value(1, 2, 100.5);
			sheet.value(3, 0, 8);
			sheet.value(3, 2, 0.1 + 0.2);
			sheet.value(3, 3, "ends");
			sheet.value(4, 0, 9);
			sheet.value(4, 4, "beyond");
			workbook.newWorksheet("other").value(0, 0, "not read");
		}
		return bytes.toByteArray();
	}

	private static int sheet(String name) {
		return List.of("no", " name ", "girth", "note").indexOf(name);
	}

	private static void assertRefused(Map<String, String> parts, String detail) throws IOException {
		ByteArrayOutputStream bytes = new ByteArrayOutputStream();
		try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
			for (Map.Entry<String, String> part : parts.entrySet()) {
				zip.putNextEntry(new ZipEntry(part.getKey()));
				zip.write(part.getValue().getBytes(StandardCharsets.UTF_8));
			}
		}
		assertRefused(bytes.toByteArray(), detail);
	}

	private static void assertRefused(byte[] file, String detail) {
		assertThatExceptionOfType(Problem.class).isThrownBy(() -> TableFile.of(file))
			.satisfies((refusal) -> assertThat(refusal.errors().get(0).detail()).contains(detail));
	}

}

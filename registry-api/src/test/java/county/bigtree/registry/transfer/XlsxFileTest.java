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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

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
	 * One cell in column 2^31 would take some 16 GB; and one in the last column of a
	 * sheet (16384, ECMA-376) in each of very many rows would take all time.
	 */
	@ParameterizedTest
	@ValueSource(strings = { "FXSHRXW1", "ZZZZZZZZZZ1", "XFD1", "AAA2", "A99999999999", "1A", "" })
	void refusesCellsWhereNoListHasAny(String address) throws IOException {
		assertRefused(
				sheetOf("<row r='1'><c r='A1'><v>1</v></c></row><row><c r='%s'><v>1</v></c></row>".formatted(address)),
				"has cells beyond column 702 (ZZ)");
	}

	@Test
	void refusesRowsWhereNoSheetHasAny() throws IOException {
		assertRefused(sheetOf("<row r='1048577'><c><v>1</v></c></row>"), "or row 1048576");
		assertRefused(sheetOf("<row r='-1'><c><v>1</v></c></row>"), "or row 1048576");
		assertRefused(sheetOf("<row r='1'>" + "<c/>".repeat(703) + "</row>"), "has cells beyond column 702 (ZZ)");
	}

	@Test
	void readsCellsThatHaveNoAddress() throws IOException {
		TableFile file = TableFile.of(sheetOf(
				"<row r='1'><c t='str'><v>no</v></c><c t='str'><v>girth</v></c></row><row r='2'><c><v>1</v></c><c r='B2'><v>90</v></c></row>"));
		assertThat(file.header()).containsExactly("no", "girth");
		assertThat(rows(file)).containsExactly(new TableFile.Row(2, List.of("1", "90")));
	}

	/** 40 MB of one part, packed to some 40 kB, pass; three such parts don't. */
	@Test
	void addsUpWhatAllPartsUnpackTo() throws IOException {
		assertRefused(bomb(3), "unpacks to more than 100 MB");
		assertRefused(bomb(2), "must be comma-separated values or a workbook");
	}

	/** The value that was last worked out stands beside the formula. */
	@Test
	void takesFormulasByTheValueThatTheSheetHolds() throws IOException {
		TableFile file = TableFile.of(
				sheetOf("""
						<row r='1'><c r='A1' t='str'><v>a</v></c><c r='B1' t='str'><v>b</v></c><c r='C1' t='str'><v>c</v></c></row>
						<row r='2'><c r='A2'><f>0.1+0.2</f><v>0.30000000000000004</v></c>
						<c r='B2' t='str'><f>HYPERLINK("http://127.0.0.1/","x")</f><v>x</v></c><c r='C2' t='e'><f>1/0</f><v>#DIV/0!</v></c></row>
						<row r='3'><c r='A3'><f>WEBSERVICE("http://127.0.0.1/")</f></c><c r='B3' t='b'><f>TRUE</f><v>1</v></c></row>"""));
		assertThat(rows(file)).containsExactly(new TableFile.Row(2, List.of("0.3", "x", "#DIV/0!")),
				new TableFile.Row(3, List.of("", "true", "")));
	}

	@Test
	void readsMergedCellsAsTheFirstOfThem() throws IOException {
		ByteArrayOutputStream bytes = new ByteArrayOutputStream();
		try (Workbook workbook = new Workbook(bytes, "test", "1.0")) {
			Worksheet sheet = workbook.newWorksheet("trees");
			List.of("no", "name", "girth")
				.forEach((name) -> sheet.value(0, List.of("no", "name", "girth").indexOf(name), name));
			sheet.value(1, 0, 1);
			sheet.value(1, 1, "Quercus alba");
			sheet.value(1, 2, 90);
			sheet.value(2, 0, 2);
			sheet.value(2, 2, 80);
			sheet.range(1, 1, 2, 1).merge();
		}
		assertThat(rows(TableFile.of(bytes.toByteArray()))).containsExactly(
				new TableFile.Row(2, List.of("1", "Quercus alba", "90")), new TableFile.Row(3, List.of("2", "", "80")));
	}

	/**
	 * By built-in formats (14 and 17, ECMA-376, 18.8.30) and by written ones; 35960 is 14
	 * June 1998 counted from the last day of 1899 with a 29 February 1900 (ECMA-376,
	 * 18.17.4.1).
	 */
	@Test
	void readsDaysByTheFormatOfTheirCells() throws IOException {
		ByteArrayOutputStream bytes = new ByteArrayOutputStream();
		List<String> formats = List.of("yyyy-mm-dd", "m/d/yyyy", "mmm yyyy", "d. mmmm", "[$-409]d\\-mmm\\-yy;@", "0.00",
				"[Red]0.0", "0 \"days\"", "0\\d", "General");
		try (Workbook workbook = new Workbook(bytes, "test", "1.0")) {
			Worksheet sheet = workbook.newWorksheet("trees");
			for (int column = 0; column < formats.size(); column++) {
				sheet.value(0, column, "c" + column);
				sheet.value(1, column, 35960);
				sheet.style(1, column).format(formats.get(column)).set();
			}
		}
		assertThat(rows(TableFile.of(bytes.toByteArray()))).containsExactly(new TableFile.Row(2, List.of("1998-06-14",
				"1998-06-14", "1998-06-14", "1998-06-14", "1998-06-14", "35960", "35960", "35960", "35960", "35960")));
	}

	private static List<TableFile.Row> rows(TableFile file) {
		List<TableFile.Row> rows = new ArrayList<>();
		file.forEach(rows::add);
		return rows;
	}

	private static byte[] bomb(int parts) throws IOException {
		ByteArrayOutputStream bytes = new ByteArrayOutputStream();
		try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
			for (int part = 0; part < parts; part++) {
				zip.putNextEntry(new ZipEntry("part" + part));
				zip.write(new byte[40_000_000]);
			}
		}
		assertThat(bytes.size()).isLessThan(200_000);
		return bytes.toByteArray();
	}

	/** A workbook of one sheet with these rows. */
	private static byte[] sheetOf(String rows) throws IOException {
		String relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
		String main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
		return zip(Map.of("[Content_Types].xml",
				"""
						<Types xmlns='http://schemas.openxmlformats.org/package/2006/content-types'><Override PartName='/xl/workbook.xml'
						ContentType='application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml'/></Types>""",
				"xl/workbook.xml",
				"""
						<workbook xmlns='%s' xmlns:r='%s'><sheets><sheet name='trees' sheetId='1' r:id='rId1'/></sheets></workbook>"""
					.formatted(main, relations),
				"xl/_rels/workbook.xml.rels",
				"""
						<Relationships xmlns='http://schemas.openxmlformats.org/package/2006/relationships'>
						<Relationship Id='rId1' Type='%s/worksheet' Target='worksheets/sheet1.xml'/></Relationships>"""
					.formatted(relations),
				"xl/worksheets/sheet1.xml",
				"<worksheet xmlns='%s'><sheetData>%s</sheetData></worksheet>".formatted(main, rows)));
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
		assertRefused(zip(parts), detail);
	}

	private static byte[] zip(Map<String, String> parts) throws IOException {
		ByteArrayOutputStream bytes = new ByteArrayOutputStream();
		try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
			for (Map.Entry<String, String> part : parts.entrySet()) {
				zip.putNextEntry(new ZipEntry(part.getKey()));
				zip.write(part.getValue().getBytes(StandardCharsets.UTF_8));
			}
		}
		return bytes.toByteArray();
	}

	private static void assertRefused(byte[] file, String detail) {
		assertThatExceptionOfType(Problem.class).isThrownBy(() -> TableFile.of(file))
			.satisfies((refusal) -> assertThat(refusal.errors().get(0).detail()).contains(detail));
	}

}

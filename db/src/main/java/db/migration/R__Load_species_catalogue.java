package db.migration;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.zip.CRC32;

import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.flywaydb.core.api.migration.BaseJavaMigration;
import org.flywaydb.core.api.migration.Context;

/**
 * Loads the species catalogue from the files under {@code reference/species}, and does so
 * again whenever one of them changes. Each CSV file is staged as it is, in a temporary
 * table of its name with a text column for each of its columns, empty fields as nulls;
 * {@code load.sql} makes the catalogue of them.
 */
public class R__Load_species_catalogue extends BaseJavaMigration {

	private static final String FOLDER = "/reference/species/";

	private static final String LOAD = "load.sql";

	private static final List<String> FILES = List.of("fia-species.csv", "revisions.csv", "additions.csv", "names.csv");

	private static final CSVFormat FORMAT = CSVFormat.RFC4180.builder()
		.setHeader()
		.setSkipHeaderRecord(true)
		.setNullString("")
		.get();

	@Override
	public Integer getChecksum() {
		CRC32 checksum = new CRC32();
		FILES.forEach((file) -> checksum.update(read(file)));
		checksum.update(read(LOAD));
		return (int) checksum.getValue();
	}

	@Override
	public void migrate(Context context) throws SQLException, IOException {
		Connection connection = context.getConnection();
		for (String file : FILES) {
			stage(connection, file);
		}
		execute(connection, new String(read(LOAD), StandardCharsets.UTF_8));
	}

	private static void stage(Connection connection, String file) throws SQLException, IOException {
		String table = file.replace(".csv", "").replace('-', '_');
		InputStream content = new ByteArrayInputStream(read(file));
		try (CSVParser rows = CSVParser.parse(new InputStreamReader(content, StandardCharsets.UTF_8), FORMAT)) {
			List<String> columns = rows.getHeaderNames();
			execute(connection,
					"create temp table " + table + " (" + String.join(" text, ", columns) + " text) on commit drop");
			String places = "?, ".repeat(columns.size() - 1) + "?";
			try (PreparedStatement insert = connection
				.prepareStatement("insert into " + table + " values (" + places + ")")) {
				for (CSVRecord row : rows) {
					add(insert, row);
				}
				insert.executeBatch();
			}
		}
	}

	private static void add(PreparedStatement insert, CSVRecord row) throws SQLException {
		for (int column = 0; column < row.size(); column++) {
			insert.setString(column + 1, row.get(column));
		}
		insert.addBatch();
	}

	private static void execute(Connection connection, String sql) throws SQLException {
		try (Statement statement = connection.createStatement()) {
			statement.execute(sql);
		}
	}

	private static byte[] read(String file) {
		try (InputStream content = R__Load_species_catalogue.class.getResourceAsStream(FOLDER + file)) {
			if (content == null) {
				throw new IllegalStateException("reference file missing: " + FOLDER + file);
			}
			return content.readAllBytes();
		}
		catch (IOException ex) {
			throw new IllegalStateException("reference file not readable: " + FOLDER + file, ex);
		}
	}

}

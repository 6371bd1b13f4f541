package county.bigtree.registry.earlier;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;

import county.bigtree.db.DatabaseLogin;
import org.postgresql.PGConnection;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;

/**
 * What an earlier release left: see {@code earlier/README.md} of the resources.
 */
record KeptRelease(String name, Resource dump) {

	private static final String DUMP = ".sql.gz";

	/** All that are kept, oldest first. */
	static List<KeptRelease> all() throws IOException {
		return Stream.of(new PathMatchingResourcePatternResolver().getResources("classpath:earlier/*" + DUMP))
			.map((dump) -> new KeptRelease(String.valueOf(dump.getFilename()).replace(DUMP, ""), dump))
			.sorted(Comparator.comparing(KeptRelease::name))
			.toList();
	}

	/** Its archive; not every release could write one. */
	Resource archive() {
		return beside(".tar.gz");
	}

	/** What it answered, by address. */
	JsonNode answers() throws IOException {
		try (GZIPInputStream packed = new GZIPInputStream(beside(".json.gz").getInputStream())) {
			return JsonMapper.shared().readTree(packed);
		}
	}

	/** Its database, with the roles of this one, as {@code psql} would load it. */
	void load(DatabaseLogin owner, DatabaseLogin service) throws IOException, SQLException {
		try (BufferedReader lines = new BufferedReader(
				new InputStreamReader(new GZIPInputStream(this.dump.getInputStream()), StandardCharsets.UTF_8));
				Connection connection = owner.dataSource().getConnection();
				Statement statement = connection.createStatement()) {
			StringBuilder sql = new StringBuilder();
			for (String line = lines.readLine(); line != null; line = lines.readLine()) {
				if (line.startsWith("COPY ") && line.endsWith(" FROM stdin;")) {
					statement.execute(sql.toString());
					sql.setLength(0);
					connection.unwrap(PGConnection.class)
						.getCopyAPI()
						.copyIn(line.substring(0, line.length() - 1), rows(lines));
				}
				else if (!line.startsWith("\\")) {
					sql.append(line.replace("registry_owner", owner.user()).replace("registry_service", service.user()))
						.append('\n');
				}
			}
			statement.execute(sql.toString());
		}
	}

	private Resource beside(String end) {
		try {
			return this.dump.createRelative(this.name + end);
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	private static StringReader rows(BufferedReader lines) throws IOException {
		StringBuilder rows = new StringBuilder();
		for (String line = lines.readLine(); line != null && !line.equals("\\."); line = lines.readLine()) {
			rows.append(line).append('\n');
		}
		return new StringReader(rows.toString());
	}

	@Override
	public String toString() {
		return this.name;
	}

}

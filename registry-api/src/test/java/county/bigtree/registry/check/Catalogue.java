package county.bigtree.registry.check;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

import org.apache.commons.csv.CSVFormat;

/**
 * Names of the species of the reference table of the Forest Inventory and Analysis
 * (REF_SPECIES, 2023), of which the catalogue is made; without the rows that are genera.
 */
final class Catalogue {

	static final List<String> NAMES = read();

	private Catalogue() {
	}

	private static List<String> read() {
		try (Reader file = new InputStreamReader(
				Objects.requireNonNull(Catalogue.class.getResourceAsStream("/reference/species/fia-species.csv")),
				StandardCharsets.UTF_8)) {
			return CSVFormat.DEFAULT.builder()
				.setHeader()
				.setSkipHeaderRecord(true)
				.get()
				.parse(file)
				.stream()
				.filter((row) -> !row.get("species").startsWith("spp"))
				.map((row) -> row.get("genus") + " " + row.get("species"))
				.distinct()
				.toList();
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

}

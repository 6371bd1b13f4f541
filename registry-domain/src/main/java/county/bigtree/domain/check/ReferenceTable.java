package county.bigtree.domain.check;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/**
 * Reads the tables of figures that stand beside this class: commas, no quotes, a heading,
 * lines that begin with # left out.
 */
final class ReferenceTable {

	private ReferenceTable() {
	}

	static List<List<String>> rows(String file) {
		try (InputStream in = Objects.requireNonNull(ReferenceTable.class.getResourceAsStream(file), file)) {
			return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines()
				.filter((line) -> !line.startsWith("#"))
				.skip(1)
				.map((line) -> List.of(line.split(",", -1)))
				.toList();
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

}

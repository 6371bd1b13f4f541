package county.bigtree.registry.openness;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;

import org.jspecify.annotations.Nullable;

/**
 * A table of a Darwin Core archive: its columns by the terms they hold, the first of them
 * the id by which tables are joined (Darwin Core text guide, 2.2). Fields are parted by
 * tabs and enclosed by nothing, so a tab or a new line within one becomes a space.
 *
 * @param file its name in the archive
 * @param rowType what a row is
 */
record DarwinTable<T>(String file, String rowType, List<Column<T>> columns) {

	static final String DARWIN_CORE = "http://rs.tdwg.org/dwc/terms/";

	static final String DUBLIN_CORE = "http://purl.org/dc/terms/";

	DarwinTable {
		columns = List.copyOf(columns);
	}

	String head() {
		return this.columns.stream().map(Column::name).collect(Collectors.joining("\t", "", "\n"));
	}

	String line(T row) {
		return this.columns.stream()
			.map((column) -> field(column.value().apply(row)))
			.collect(Collectors.joining("\t", "", "\n"));
	}

	private static String field(@Nullable Object value) {
		return (value == null) ? "" : value.toString().replaceAll("[\\p{Cntrl}\\u2028\\u2029]+", " ").strip();
	}

	/**
	 * A column.
	 *
	 * @param term the address of what it holds
	 */
	record Column<T>(String term, Function<T, @Nullable Object> value) {

		static <T> Column<T> darwin(String term, Function<T, @Nullable Object> value) {
			return new Column<>(DARWIN_CORE + term, value);
		}

		String name() {
			return this.term.substring(this.term.lastIndexOf('/') + 1);
		}

	}

}

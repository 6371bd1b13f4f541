package county.bigtree.registry.archive;

import java.util.List;

/**
 * A table of a register as an archive holds it.
 *
 * @param columns in the order of the table, without those that are kept elsewhere in the
 * archive
 * @param key the columns by which its rows are told apart and ordered
 */
record RegisterTable(String name, List<Column> columns, List<Column> key) {

	RegisterTable {
		columns = List.copyOf(columns);
		key = List.copyOf(key);
	}

	/** Writes all rows, in an order that is the same on every server. */
	String copyOut() {
		String selected = String.join(", ", this.columns.stream().map(Column::written).toList());
		String ordered = this.key.isEmpty() ? ""
				: " order by " + String.join(", ", this.key.stream().map(Column::ordered).toList());
		return "copy (select " + selected + " from " + quoted(this.name) + ordered
				+ ") to stdout (format csv, header true, encoding 'UTF8')";
	}

	/** Takes rows of these columns in. */
	static String copyIn(String table, List<String> columns) {
		return "copy " + quoted(table) + " (" + String.join(", ", columns.stream().map(RegisterTable::quoted).toList())
				+ ") from stdin (format csv, encoding 'UTF8')";
	}

	List<String> columnNames() {
		return this.columns.stream().map(Column::name).toList();
	}

	/** Names come from the database's catalogue, or were compared with it. */
	static String quoted(String name) {
		return "\"" + name.replace("\"", "\"\"") + "\"";
	}

	/**
	 * A column.
	 *
	 * @param type as PostgreSQL names it
	 */
	record Column(String table, String name, String type) {

		private static final List<String> TEXTS = List.of("text", "character varying", "character", "bpchar");

		/** No password goes into an archive, not even as a hash. */
		private String written() {
			return this.table.equals("person") && this.name.equals("password_hash") ? "'' as password_hash"
					: quoted(this.name);
		}

		/** Every server sorts texts alike by their bytes. */
		private String ordered() {
			boolean isText = TEXTS.contains(this.type.replaceFirst("\\(.*", ""));
			return quoted(this.name) + (isText ? " collate \"C\"" : "");
		}

	}

}

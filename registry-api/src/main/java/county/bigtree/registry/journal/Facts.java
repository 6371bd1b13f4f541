package county.bigtree.registry.journal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Appends facts, each under the change that brings it.
 */
@Component
public class Facts {

	private static final Set<String> JSON = Set.of("boundary", "body", "readings", "confirmed_checks", "checks",
			"declares", "agreement");

	private final JdbcClient jdbc;

	Facts(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * Appends one row.
	 * @param change the change that brings it: gives county, seq and recorded_at
	 * @param table the table
	 * @param columnsAndValues names of the other columns, each followed by its value;
	 * values of JSON columns are JSON text
	 */
	public void append(Change change, FactTable table, @Nullable Object... columnsAndValues) {
		List<String> columns = new ArrayList<>(
				List.of((table == FactTable.COUNTY) ? "key" : "county", "seq", "recorded_at"));
		List<@Nullable Object> values = new ArrayList<>(
				List.of(change.county(), change.seq(), SqlTime.of(change.recordedAt())));
		List<String> places = new ArrayList<>(List.of("?", "?", "?"));
		for (int index = 0; index < columnsAndValues.length; index += 2) {
			String column = String.valueOf(columnsAndValues[index]).toLowerCase(Locale.ROOT);
			Object value = columnsAndValues[index + 1];
			columns.add(column);
			values.add((value instanceof Instant instant) ? SqlTime.of(instant) : value);
			places.add(JSON.contains(column) ? "?::jsonb" : "?");
		}
		this.jdbc
			.sql("insert into %s (%s) values (%s)".formatted(table.table(), String.join(", ", columns),
					String.join(", ", places)))
			.params(values)
			.update();
		change.wrote(table);
	}

}

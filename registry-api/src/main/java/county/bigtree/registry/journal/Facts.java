package county.bigtree.registry.journal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;

/**
 * Appends facts, each under the change that brings it.
 */
@Component
public class Facts {

	private static final Set<String> JSON = Set.of("boundary", "body", "readings", "confirmed_checks", "checks",
			"declares", "agreement");

	private final JdbcTemplate jdbc;

	Facts(JdbcTemplate jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * Writes all facts that some work appends in batches, when it is done. Until then
	 * they can't be read.
	 */
	public void together(Change change, Runnable work) {
		GatheredFacts gathered = new GatheredFacts();
		change.gather(gathered);
		try {
			work.run();
		}
		finally {
			change.gather(null);
		}
		gathered.forEachBatch(this.jdbc::batchUpdate);
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
		write(change, table, "insert into %s (%s) values (%s)".formatted(table.table(), String.join(", ", columns),
				String.join(", ", places)), values.toArray());
		change.wrote(table);
	}

	/**
	 * Writes a row that belongs to the facts of a table, at once or with what is
	 * gathered.
	 */
	void write(Change change, FactTable table, String sql, @Nullable Object... values) {
		GatheredFacts gathered = change.gathered();
		if (gathered != null) {
			gathered.add(table, sql, values);
		}
		else {
			this.jdbc.update(sql, values);
		}
	}

}

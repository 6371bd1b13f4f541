package county.bigtree.registry.journal;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;

import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * Writes the entries of changes. An entry names who, when and what, and holds every fact
 * as the database's own JSON form of its row, so that the journal can be compared with
 * the facts. Free text is in it only as a salted digest. A second county that a change
 * touches gets an entry that names the first.
 */
final class Entries {

	/**
	 * The same as {@link #told} of each {@link #fact}, made by the database of rows of
	 * fact_table and fact.
	 */
	static final String TOLD_IN_SQL = """
			'"facts":[' || string_agg('{"row":' || fact || ',"table":"' || fact_table || '"}', ',' order by fact_table, fact)
			|| ']'""";

	private final JdbcClient jdbc;

	Entries(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	Entry of(Change change, CountyHead head, String kind, @Nullable UUID actor) {
		boolean first = head.county().equals(change.county());
		String facts = first ? told(facts(change)) : "\"factsIn\":\"" + change.county() + "\"";
		return Entry.after(head.chain(), text((actor != null) ? actor.toString() : null, change.recordedAt(),
				head.county(), facts, change.id().toString(), kind, head.seq() + 1));
	}

	/**
	 * The text of an entry, its members in the order of their names.
	 */
	static String text(@Nullable String actor, Instant at, String county, String facts, String id, String kind,
			long seq) {
		return "{\"actor\":%s,\"at\":\"%s\",\"county\":\"%s\",%s,\"id\":\"%s\",\"kind\":\"%s\",\"seq\":%d}"
			.formatted((actor != null) ? "\"" + actor + "\"" : "null", at, county, facts, id, kind, seq);
	}

	/**
	 * The facts of an entry, each in the form of {@link #fact}.
	 */
	static String told(List<String> facts) {
		return facts.stream().collect(Collectors.joining(",", "\"facts\":[", "]"));
	}

	static String fact(String table, String row) {
		return "{\"row\":%s,\"table\":\"%s\"}".formatted(row, table);
	}

	private List<String> facts(Change change) {
		if (change.written().isEmpty()) {
			return List.of();
		}
		String union = change.written()
			.stream()
			.sorted()
			.map(FactTable::selectFacts)
			.collect(Collectors.joining(" union all "));
		return this.jdbc.sql(union + " order by 1, 2")
			.param("county", change.county())
			.param("seq", change.seq())
			.query((row, number) -> fact(row.getString("fact_table"), row.getString("fact")))
			.list();
	}

}

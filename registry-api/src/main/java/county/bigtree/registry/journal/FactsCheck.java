package county.bigtree.registry.journal;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

import county.bigtree.registry.audit.Findings;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Compares the entries of changes with the facts in the tables, row by row. Columns that
 * a table got after an entry was written, and that are null, are no difference.
 */
@Component
class FactsCheck {

	private static final int CHANGES = 200;

	private static final int BYTES = 8_000_000;

	private static final String FACTS = Arrays.stream(FactTable.values())
		.map(FactTable::selectRange)
		.collect(Collectors.joining(" union all ", "(", ") f"));

	private static final String NOTHING = Entries.told(List.of());

	private final JdbcClient jdbc;

	private final JsonMapper json;

	FactsCheck(JdbcClient jdbc, JsonMapper json) {
		this.jdbc = jdbc;
		this.json = json;
	}

	OfCounty of(String county, Findings findings) {
		return new OfCounty(county, findings);
	}

	/**
	 * What the entries of the changes should tell by the tables, written as
	 * {@link Entries} writes it; nothing of changes to which no fact belongs.
	 */
	private Map<Long, String> told(String county, long from, long to) {
		Map<Long, String> told = new TreeMap<>();
		this.jdbc.sql("select seq, " + Entries.TOLD_IN_SQL + " as told from " + FACTS + " group by seq")
			.param("county", county)
			.param("from", from)
			.param("to", to)
			.query((row) -> {
				told.put(row.getLong("seq"), row.getString("told"));
			});
		return told;
	}

	private Map<Long, List<Fact>> facts(String county, long from, long to) {
		Map<Long, List<Fact>> facts = new TreeMap<>();
		this.jdbc.sql("select * from " + FACTS + " order by seq, fact_table, fact")
			.param("county", county)
			.param("from", from)
			.param("to", to)
			.query((row) -> {
				facts.computeIfAbsent(row.getLong("seq"), (seq) -> new ArrayList<>())
					.add(new Fact(row.getString("fact_table"), row.getString("fact")));
			});
		return facts;
	}

	private static void compare(Link link, JsonNode entry, List<Fact> facts, JsonMapper json, Findings findings) {
		List<Parsed> rest = new ArrayList<>();
		Map<String, Deque<Parsed>> same = new LinkedHashMap<>();
		for (Fact fact : facts) {
			Parsed parsed = new Parsed(fact, json.readTree(fact.row()));
			same.computeIfAbsent(fact.table() + parsed.row(), (text) -> new ArrayDeque<>()).add(parsed);
		}
		List<JsonNode> others = new ArrayList<>();
		for (JsonNode told : entry.path("facts")) {
			Deque<Parsed> equal = same.get(told.path("table").asString("") + told.path("row"));
			if (equal == null || equal.poll() == null) {
				others.add(told);
			}
		}
		same.values().forEach(rest::addAll);
		for (JsonNode told : others) {
			if (!takeMatch(told, rest)) {
				findings.add("%s tells of a %s that does not stand so in its table: %s".formatted(link.name(),
						told.path("table").asString(""), told.path("row")));
			}
		}
		rest.forEach((parsed) -> findings.add("%s does not tell of this %s in its table: %s".formatted(link.name(),
				parsed.fact().table().replace('_', ' '), parsed.fact().row())));
	}

	private static boolean takeMatch(JsonNode told, List<Parsed> rest) {
		for (Iterator<Parsed> facts = rest.iterator(); facts.hasNext();) {
			Parsed parsed = facts.next();
			if (parsed.fact().table().equals(told.path("table").asString(""))
					&& matches(told.path("row"), parsed.row())) {
				facts.remove();
				return true;
			}
		}
		return false;
	}

	private static boolean matches(JsonNode told, JsonNode row) {
		return row.properties()
			.stream()
			.allMatch((column) -> told.has(column.getKey())
					? told.path(column.getKey()).toString().equals(column.getValue().toString())
					: column.getValue().isNull())
				&& told.propertyNames().stream().allMatch(row::has);
	}

	/**
	 * The comparison for one county, some changes at a time.
	 */
	final class OfCounty {

		private final String county;

		private final Findings findings;

		private final List<Link> waiting = new ArrayList<>();

		private long bytes;

		private long from = 0;

		private OfCounty(String county, Findings findings) {
			this.county = county;
			this.findings = findings;
		}

		void take(Link link) {
			this.waiting.add(link);
			this.bytes += link.entry().length;
			if (this.waiting.size() >= CHANGES || this.bytes >= BYTES) {
				compareThrough(link.seq());
			}
		}

		void finish() {
			compareThrough(Long.MAX_VALUE);
		}

		private void compareThrough(long seq) {
			Map<Long, String> told = told(this.county, this.from, seq);
			List<Link> others = new ArrayList<>();
			for (Link link : this.waiting) {
				String ofChange = told.remove(link.seq());
				if (!link.text().equals(text(link, (ofChange != null) ? ofChange : NOTHING))) {
					others.add(link);
				}
			}
			if (!others.isEmpty() || !told.isEmpty()) {
				compareRows(others, told.keySet(), facts(this.county, this.from, seq));
			}
			this.from = (seq == Long.MAX_VALUE) ? seq : seq + 1;
			this.waiting.clear();
			this.bytes = 0;
		}

		private void compareRows(List<Link> links, Set<Long> strays, Map<Long, List<Fact>> facts) {
			links.forEach((link) -> compareParsed(link, facts.getOrDefault(link.seq(), List.of())));
			strays.forEach((stray) -> facts.getOrDefault(stray, List.of())
				.forEach((fact) -> this.findings.add("%s: this %s belongs to change %d, which is not in the journal: %s"
					.formatted(this.county, fact.table().replace('_', ' '), stray, fact.row()))));
		}

		private void compareParsed(Link link, List<Fact> facts) {
			JsonNode entry = parse(link);
			if (entry == null) {
				this.findings.add(link.name() + ": its entry is not JSON");
				return;
			}
			String elsewhere = entry.path("factsIn").asString(null);
			String head = (elsewhere != null) ? "\"factsIn\":\"" + elsewhere + "\"" : "";
			if (elsewhere != null && !link.text().equals(text(link, head))
					|| elsewhere == null && !headFits(link, entry)) {
				this.findings.add(link.name() + ": its entry says otherwise than the columns beside it");
			}
			if (elsewhere != null && !changeExists(elsewhere, link)) {
				this.findings
					.add("%s: its facts should be in %s, which knows no such change".formatted(link.name(), elsewhere));
			}
			FactsCheck.compare(link, entry, facts, FactsCheck.this.json, this.findings);
		}

		private @Nullable JsonNode parse(Link link) {
			try {
				return FactsCheck.this.json.readTree(link.text());
			}
			catch (JacksonException ex) {
				return null;
			}
		}

		private boolean headFits(Link link, JsonNode entry) {
			return text(link, "")
				.equals(Entries.text(entry.path("actor").asString(null), link.recordedAt(),
						entry.path("county").asString(""), "", entry.path("id").asString(""),
						entry.path("kind").asString(""), entry.path("seq").asLong(-1)))
					&& link.recordedAt().toString().equals(entry.path("at").asString(""));
		}

		private boolean changeExists(String other, Link link) {
			return FactsCheck.this.jdbc
				.sql("select exists (select from change where county = ? and id = ?::uuid and recorded_at = ?)")
				.params(other, link.id(), SqlTime.of(link.recordedAt()))
				.query(Boolean.class)
				.single();
		}

		private static String text(Link link, String facts) {
			return Entries.text(link.actor(), link.recordedAt(), link.county(), facts, link.id(), link.kind(),
					link.seq());
		}

	}

	/**
	 * A row of a fact table as JSON text.
	 */
	private record Fact(String table, String row) {
	}

	/**
	 * A row of a fact table, read.
	 */
	private record Parsed(Fact fact, JsonNode row) {
	}

}

package county.bigtree.registry.archive;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

import tools.jackson.databind.JsonNode;

import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * The addresses of everything that can be read of a register: each GET of the API's
 * description, for what its variables can stand for, also as of several days and as known
 * at several instants where that can be asked.
 */
final class AllReads {

	/** What has to be asked something, and what a restored register does without. */
	private static final Set<String> OTHERWISE = Set.of("/api/v1/measuring/point", "/api/v1/records", "/api/v1/tokens",
			"/api/v1/sign-ins", "/api/v1/people/me/sign-ins", "/api/v1/import-files/{id}",
			"/api/v1/counties/{county}/import-files");

	private static final Pattern VARIABLE = Pattern.compile("\\{(\\w+)}");

	private static final Map<String, String> TABLES = Map.of("condition-reports", "condition_report", "measurements",
			"measurement", "nominations", "nomination", "sign-offs", "sign_off", "imports", "import_job", "letters",
			"letter", "owners", "tree_owner", "relocations", "relocation_proposal", "visits", "visit", "photos",
			"photo");

	private static final List<String> PAGES = List.of("/", "/about", "/counties/{county}",
			"/counties/{county}/species/{species}", "/counties/{county}/species/{species}/story", "/species/{species}",
			"/trees/{tree}", "/exports/journal.jsonl", "/api/v1/records?tree={tree}", "/api/v1/people?county={county}");

	private final JdbcClient jdbc;

	private final JsonNode description;

	private final int most;

	/**
	 * Makes the addresses of a register.
	 * @param most how many values a variable stands for in one address, spread evenly
	 * over all that it could
	 */
	AllReads(JdbcClient jdbc, JsonNode description, int most) {
		this.jdbc = jdbc;
		this.description = description;
		this.most = most;
	}

	/** What was noted of those who read comes first, since reading adds to it. */
	List<String> addresses() {
		Set<String> addresses = new LinkedHashSet<>(filled("/api/v1/counties/{county}/openings"));
		this.description.path("paths").properties().forEach((path) -> {
			JsonNode get = path.getValue().path("get");
			if (!get.isMissingNode() && !OTHERWISE.contains(path.getKey()) && !isLeftOut(path.getKey())) {
				filled(path.getKey()).forEach((address) -> addresses.addAll(atTimes(address, get)));
			}
		});
		PAGES.forEach((page) -> addresses.addAll(filled(page)));
		return List.copyOf(addresses);
	}

	/**
	 * PDF files hold when they were made, and whatever takes two variables, of which one
	 * must belong to the other, is read at addresses of its own.
	 */
	private static boolean isLeftOut(String path) {
		boolean book = path.contains("{county}") && path.contains("{species}");
		return path.endsWith(".pdf") || !book && VARIABLE.matcher(path).results().count() > 1;
	}

	private List<String> atTimes(String address, JsonNode get) {
		List<String> addresses = new ArrayList<>(List.of(address));
		boolean day = takes(get, "asOf");
		boolean instant = takes(get, "knownAt");
		for (String at : times()) {
			if (day) {
				addresses.add(address + "?asOf=" + at.substring(0, 10));
			}
			if (instant) {
				addresses.add(address + "?knownAt=" + at);
			}
			if (day && instant) {
				addresses.add(address + "?knownAt=" + at + "&asOf=" + at.substring(0, 4) + "-01-01");
			}
		}
		return addresses;
	}

	/**
	 * Where a tenth, a half and nine tenths of all changes had been recorded since the
	 * last county was founded.
	 */
	private List<String> times() {
		return this.jdbc
			.sql("""
						select to_char(percentile_disc(part) within group (order by recorded_at), 'YYYY-MM-DD"T"HH24:MI:SS.US"Z"')
						from change, unnest(array[0.1, 0.5, 0.9]) part
					where recorded_at > (select max(recorded_at) from county) group by part order by 1""")
			.query(String.class)
			.list();
	}

	private static boolean takes(JsonNode get, String parameter) {
		for (JsonNode one : get.path("parameters")) {
			if (one.path("name").stringValue("").equals(parameter)) {
				return true;
			}
		}
		return false;
	}

	private List<String> filled(String path) {
		Matcher variable = VARIABLE.matcher(path);
		if (!variable.find()) {
			return List.of(path);
		}
		if (path.contains("{county}") && path.contains("{species}")) {
			return some("select county || ' ' || species from book order by county, species").stream()
				.map((book) -> path.replace("{county}", book.split(" ", 2)[0])
					.replace("{species}", book.split(" ", 2)[1]))
				.toList();
		}
		String name = variable.group(1);
		return some(values(name, path)).stream().map((value) -> path.replace("{" + name + "}", value)).toList();
	}

	private List<String> some(String query) {
		List<String> all = this.jdbc.sql(query).query(String.class).list();
		int step = Math.max(1, all.size() / this.most);
		return IntStream.iterate(0, (i) -> i < all.size(), (i) -> i + step).mapToObj(all::get).toList();
	}

	private String values(String variable, String path) {
		return switch (variable) {
			case "county" -> "select key from county order by key";
			case "species" -> "select species from (select distinct species from book union "
					+ "select key from (select key from species order by md5(key) limit 10) s) b order by 1";
			case "tree" -> "select id::text from tree order by id";
			case "person" -> "select id::text from person order by id";
			case "number" -> "select number::text from seal order by number";
			case "id" -> {
				String folder = path.replaceFirst("/\\{id}.*", "").replaceFirst(".*/", "");
				yield ids(TABLES.getOrDefault(folder, folder.replaceFirst("s$", "").replace('-', '_')));
			}
			default -> ids(variable);
		};
	}

	/** Of the table of that name; none where what is meant is kept elsewhere. */
	private String ids(String table) {
		boolean there = this.jdbc.sql("select to_regclass(?) is not null").param(table).query(Boolean.class).single();
		return there ? "select id::text from " + table + " order by id" : "select '' where false";
	}

}

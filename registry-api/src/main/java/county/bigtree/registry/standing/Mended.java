package county.bigtree.registry.standing;

import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.Stream;

import county.bigtree.registry.journal.SqlTime;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * When the books of counties were last put in order by {@link Recompute}.
 */
@Component
class Mended {

	static final String KIND = "recomputed";

	private final JdbcClient jdbc;

	Mended(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	Map<String, Instant> lastByCounty() {
		Map<String, Instant> last = new HashMap<>();
		this.jdbc.sql("select county, max(recorded_at) as at from change where kind = ? group by county")
			.param(KIND)
			.query((row) -> {
				last.put(row.getString("county"), SqlTime.get(row, "at"));
			});
		return last;
	}

	/**
	 * Whether the books of all these counties were put in order after the instant.
	 */
	static boolean since(Instant at, Map<String, Instant> mendedAt, Stream<String> counties) {
		return counties.allMatch((county) -> at.isBefore(mendedAt.getOrDefault(county, Instant.MIN)));
	}

}

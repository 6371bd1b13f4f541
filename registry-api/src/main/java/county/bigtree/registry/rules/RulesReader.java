package county.bigtree.registry.rules;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

import county.bigtree.domain.rulebook.Rulebooks;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.SqlTime;
import org.springframework.dao.EmptyResultDataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/**
 * Reads the rules of counties.
 */
@Component
public class RulesReader {

	private final JdbcClient jdbc;

	private final JsonMapper json;

	RulesReader(JdbcClient jdbc, JsonMapper json) {
		this.jdbc = jdbc;
		this.json = json;
	}

	/**
	 * The rules of a county by which a change of it is judged that brings no rulebook.
	 */
	public CountyRules get(Change change, String county) {
		return change.remember(CountyRules.class, county, () -> get(county));
	}

	/**
	 * The rules of a county that is in the register.
	 */
	public CountyRules get(String county) {
		List<String> zones = new ArrayList<>();
		List<Rulebooks.Recorded> recorded = new ArrayList<>();
		this.jdbc
			.sql("""
					select c.time_zone, r.body::text as body, r.recorded_at from county c left join rulebook r on r.county = c.key
					where c.key = ?""")
			.param(county)
			.query((row) -> {
				zones.add(row.getString("time_zone"));
				String body = row.getString("body");
				if (body != null) {
					recorded.add(new Rulebooks.Recorded(this.json.readValue(body, RulebookJson.class).toRulebook(),
							SqlTime.get(row, "recorded_at")));
				}
			});
		if (zones.isEmpty()) {
			throw new EmptyResultDataAccessException("No county is called " + county, 1);
		}
		return new CountyRules(ZoneId.of(zones.get(0)), new Rulebooks(recorded));
	}

}

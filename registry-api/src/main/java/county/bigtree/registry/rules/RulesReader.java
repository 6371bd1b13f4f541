package county.bigtree.registry.rules;

import java.time.ZoneId;
import java.util.List;

import county.bigtree.domain.rulebook.Rulebooks;
import county.bigtree.registry.journal.SqlTime;
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
	 * The rules of a county that is in the register.
	 */
	public CountyRules get(String county) {
		ZoneId zone = ZoneId
			.of(this.jdbc.sql("select time_zone from county where key = ?").param(county).query(String.class).single());
		List<Rulebooks.Recorded> recorded = this.jdbc
			.sql("select body::text as body, recorded_at from rulebook where county = ?")
			.param(county)
			.query((row, number) -> new Rulebooks.Recorded(
					this.json.readValue(row.getString("body"), RulebookJson.class).toRulebook(),
					SqlTime.get(row, "recorded_at")))
			.list();
		return new CountyRules(zone, new Rulebooks(recorded));
	}

}

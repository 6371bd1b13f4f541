package county.bigtree.registry.county;

import java.util.List;
import java.util.Optional;

import county.bigtree.registry.rules.RulebookJson;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Reads counties and their rulebooks.
 */
@Service
public class ReadCounties {

	private static final String COUNTIES = """
			select c.key, c.name, c.state, c.time_zone, c.tag_prefix, c.practice, c.boundary::text as boundary, c.revision,
			  (select coalesce(sum(trees), 0) from book where county = c.key)::int as trees,
			  (select count(*) from book where county = c.key and trees > 0)::int as species,
			  (select count(*) from title_span where county = c.key and to_at is null)::int as titles
			from county_now c
			""";

	private final JdbcClient jdbc;

	private final JsonMapper json;

	ReadCounties(JdbcClient jdbc, JsonMapper json) {
		this.jdbc = jdbc;
		this.json = json;
	}

	/**
	 * Counties that are not for practice, by key.
	 */
	@Transactional(readOnly = true)
	public List<County> list(String after, int limit) {
		return this.jdbc.sql(COUNTIES + "where not c.practice and c.key > ? order by c.key limit ?")
			.params(after, limit)
			.query(County.class)
			.list();
	}

	/**
	 * The county with this key.
	 */
	@Transactional(readOnly = true)
	public Optional<County> find(String key) {
		return this.jdbc.sql(COUNTIES + "where c.key = ?").param(key).query(County.class).optional();
	}

	/**
	 * The county's rulebooks, the latest effective first.
	 * @param withReasons whether to tell why each was added, which is for coordinators
	 */
	@Transactional(readOnly = true)
	public List<RulebookJson> rulebooks(String county, boolean withReasons) {
		return this.jdbc
			.sql("""
					select r.body::text as rules, why.body as reason from rulebook r left join text_body why on why.id = r.reason
					where r.county = ? order by r.effective_on desc, r.recorded_at desc""")
			.param(county)
			.query((row, number) -> {
				RulebookJson rules = this.json.readValue(row.getString("rules"), RulebookJson.class);
				return withReasons ? rules.because(row.getString("reason")) : rules;
			})
			.list();
	}

	/**
	 * The boundary as JSON.
	 */
	public @Nullable JsonNode boundary(County county) {
		return (county.boundary() != null) ? this.json.readTree(county.boundary()) : null;
	}

	/**
	 * A county with the numbers of its ranked trees, their species and the titles held.
	 */
	public record County(String key, String name, String state, String timeZone, String tagPrefix, boolean practice,
			@Nullable String boundary, int trees, int species, int titles, long revision) {
	}

}

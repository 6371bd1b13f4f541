package county.bigtree.registry.transfer;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;

import com.jayway.jsonpath.DocumentContext;

import org.springframework.jdbc.core.simple.JdbcClient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Files of older records for tests, and how they are mapped.
 */
final class OlderFiles {

	private static final String START = """
			{"basis": "An invented list", "rowKey": "no", "locationAccuracyMetres": 20000, %s
			 "columns": {"species": {"constant": "Quercus alba"}, "tag": "no", "latitude": {"constant": "40.5"},
			 "longitude": {"constant": "-87.5"}%s}}""";

	private static final String FIGURES = """
			"girth": {"column": "%s", "method": "tape", "unit": "in"}, "height": {"column": "%s", "unit": "ft"},
			"crown": {"column": "%s", "unit": "ft"}""";

	static final String ONE_VISIT = START.formatted("",
			", \"measuredOn\": \"day\", \"condition\": \"state\", " + FIGURES.formatted("girth", "height", "crown"));

	static final String HEADER = "no,day,girth,height,crown,state\n";

	static final String TWO_VISITS = START
		.formatted("\"visits\": [{\"measuredOn\": \"d1\", %s}, {\"measuredOn\": {\"constant\": \"May 2015\"}, %s}],"
			.formatted(FIGURES.formatted("g1", "h1", "c1"), FIGURES.formatted("g2", "h2", "c2")), "");

	static final String TWO_HEADER = "no,d1,g1,h1,c1,g2,h2,c2\n";

	private OlderFiles() {
	}

	/**
	 * Measurements of a county, each with its day, to what that is known, and its points.
	 */
	static List<String> measurements(JdbcClient jdbc, String county) {
		return jdbc.sql("""
				select t.tag || ' ' || m.measured_on || ' ' || coalesce(m.measured_on_known_to, '-') || ' '
				  || coalesce(round(r.points)::text, 'null')
				from measurement m join tree t on t.id = m.tree join reduction r on r.measurement = m.id
				where m.county = ? order by t.tag, m.measured_on, r.points""").param(county).query(String.class).list();
	}

	static String path(DocumentContext job) {
		return "/api/v1/imports/" + job.<String>read("$.id");
	}

	static byte[] file(String rows) {
		return rows.replace("\n", "\r\n").getBytes(StandardCharsets.UTF_8);
	}

	static void assertCounts(DocumentContext job, int accepted, int kept, int changed, int rejected, int already) {
		assertThat(job.<Map<String, Object>>read("$")).containsEntry("status", "done")
			.containsEntry("accepted", accepted)
			.containsEntry("kept", kept)
			.containsEntry("changed", changed)
			.containsEntry("rejected", rejected)
			.containsEntry("alreadyImported", already);
	}

}

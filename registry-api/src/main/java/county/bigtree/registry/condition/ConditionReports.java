package county.bigtree.registry.condition;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import com.fasterxml.jackson.annotation.JsonIgnore;
import county.bigtree.registry.http.Revisioned;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.problem.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The condition reports on record.
 */
@Component
public class ConditionReports {

	private static final String REPORT = """
			select r.id, r.tree, t.tag, r.condition, r.observed_on, d.began_on, d.began_earliest, r.recorded_at, r.reported_by,
			  case when d.report is null then 'waiting' when d.accepted then 'accepted' else 'declined' end as status,
			  case when d.report is null then 1 else 2 end as revision
			from condition_report r join tree t on t.id = r.tree left join condition_decision d on d.report = r.id
			""";

	private final JdbcClient jdbc;

	ConditionReports(JdbcClient jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * The report with this id.
	 * @throws Problem of not being found
	 */
	public Report get(UUID id) {
		return find(id).orElseThrow(() -> Problem.notFound("No condition report has this id."));
	}

	public Optional<Report> find(UUID id) {
		return this.jdbc.sql(REPORT + "where r.id = ?").param(id).query(ConditionReports::report).optional();
	}

	/**
	 * The reports of a county in the order of their filing.
	 */
	public List<Report> list(String county, @Nullable String status, UUID after, int limit) {
		return this.jdbc.sql("select * from (" + REPORT + """
				where r.county = :county and r.id > :after) reports
				where cast(:status as text) is null or status = :status order by id limit :limit""")
			.param("county", county)
			.param("status", status, java.sql.Types.VARCHAR)
			.param("after", after)
			.param("limit", limit)
			.query(ConditionReports::report)
			.list();
	}

	private static Report report(ResultSet row, int number) throws SQLException {
		LocalDate began = row.getObject("began_on", LocalDate.class);
		LocalDate earliest = row.getObject("began_earliest", LocalDate.class);
		return new Report(row.getObject("id", UUID.class), row.getObject("tree", UUID.class), row.getString("tag"),
				row.getString("condition"), row.getObject("observed_on", LocalDate.class),
				(earliest == null) ? began : null,
				(earliest != null && began != null) ? new Began.Between(earliest, began) : null,
				SqlTime.get(row, "recorded_at"), row.getObject("reported_by", UUID.class), row.getString("status"),
				row.getLong("revision"));
	}

	/**
	 * A condition report.
	 *
	 * @param began the day on which it began, where that is known
	 * @param between in its place, the days between which it began
	 * @param status waiting, accepted or declined
	 */
	public record Report(UUID id, UUID tree, String tag, String condition, LocalDate observedOn,
			@Nullable LocalDate began, Began.@Nullable Between between, Instant recordedAt, UUID reportedBy,
			String status, @JsonIgnore long revision) implements Revisioned {
	}

}

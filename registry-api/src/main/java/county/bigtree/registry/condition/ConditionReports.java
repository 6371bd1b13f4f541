package county.bigtree.registry.condition;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonProperty;
import county.bigtree.registry.http.Revisioned;
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
			select r.id, r.tree, t.tag, r.condition, r.observed_on, case when d.began_earliest is null then d.began_on end as began,
			  d.began_earliest, case when d.began_earliest is not null then d.began_on end as began_latest, r.recorded_at, r.reported_by,
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
		return this.jdbc.sql(REPORT + "where r.id = ?").param(id).query(Report.class).optional();
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
			.query(Report.class)
			.list();
	}

	/**
	 * A condition report.
	 *
	 * @param status waiting, accepted or declined
	 */
	public record Report(UUID id, UUID tree, String tag, String condition, LocalDate observedOn,
			@Nullable LocalDate began, @JsonIgnore @Nullable LocalDate beganEarliest,
			@JsonIgnore @Nullable LocalDate beganLatest, Instant recordedAt, UUID reportedBy, String status,
			@JsonIgnore long revision) implements Revisioned {

		/**
		 * The days between which it began, where no day is known.
		 */
		@JsonProperty
		public Began.@Nullable Between between() {
			return (this.beganEarliest != null && this.beganLatest != null)
					? new Began.Between(this.beganEarliest, this.beganLatest) : null;
		}

	}

}

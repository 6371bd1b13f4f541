package county.bigtree.registry.transfer;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;

import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.journal.SqlTime;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.rules.RulesReader;
import county.bigtree.registry.species.SpeciesCatalogue;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The imports of this register, with the rows that each rejected. The file of one is kept
 * until it is finished.
 */
@Component
public class ImportJobs {

	private static final String JOBS = """
			select j.*, w.recorded_at as withdrawn_at,
			  case when w.job is null then j.status when exists (select from import_left(j.id)) then 'withdrawing' else 'withdrawn' end as state,
			  1 + (j.finished_at is not null)::int + (w.job is not null)::int
			    + (select count(*) from import_name where job = j.id) as revision,
			  (select count(*) from import_note where job = j.id) as notes
			from import_job j left join import_withdrawal w on w.job = j.id
			""";

	private static final TypeReference<List<String>> TEXTS = new TypeReference<>() {
	};

	private final JdbcClient jdbc;

	private final JsonMapper json;

	private final RulesReader rules;

	private final RegisterClock clock;

	ImportJobs(JdbcClient jdbc, JsonMapper json, RulesReader rules, RegisterClock clock) {
		this.jdbc = jdbc;
		this.json = json;
		this.rules = rules;
		this.clock = clock;
	}

	void queue(UUID id, String county, UUID startedBy, Sent sent, boolean dryRun, int rows) {
		this.jdbc
			.sql("""
					insert into import_job (id, county, started_by, created_at, mapping, dry_run, header, row_count, file, status)
					values (:id, :county, :by, clock_timestamp(), :mapping::jsonb, :dryRun, :header::jsonb, :rows, :file, 'queued')""")
			.param("id", id)
			.param("county", county)
			.param("by", startedBy)
			.param("mapping", sent.mapping())
			.param("dryRun", dryRun)
			.param("header", this.json.writeValueAsString(sent.header()))
			.param("rows", rows)
			.param("file", sent.file())
			.update();
	}

	/**
	 * The import with this id, for a coordinator of its county.
	 * @throws Problem of not being found, for anyone else
	 */
	public ImportJob get(Actor actor, UUID id) {
		return find(id).filter((job) -> actor.isCoordinatorOf(job.county()))
			.orElseThrow(() -> Problem.notFound("No import has this id."));
	}

	/**
	 * The imports of a county, the latest first.
	 * @param before only those begun before the one with this id, or null
	 */
	public List<ImportJob> of(String county, @Nullable UUID before, int limit) {
		return this.jdbc.sql(JOBS
				+ "where j.county = :county and (cast(:before as uuid) is null or j.id < :before) order by j.id desc limit :limit")
			.param("county", county)
			.param("before", before, java.sql.Types.OTHER)
			.param("limit", limit)
			.query(ImportJobs::job)
			.list();
	}

	Optional<ImportJob> find(UUID id) {
		return this.jdbc.sql(JOBS + "where j.id = ?").param(id).query(ImportJobs::job).optional();
	}

	/**
	 * What a job that is not finished works on.
	 */
	Sent sent(UUID id) {
		return this.jdbc
			.sql("select mapping::text as mapping, header::text as header, file from import_job where id = ?")
			.param(id)
			.query((row, number) -> new Sent(row.getString("mapping"), texts(row.getString("header")),
					row.getBytes("file")))
			.single();
	}

	/**
	 * Jobs that are not finished, or of which something decided later is not done, the
	 * oldest first.
	 */
	List<UUID> unfinished() {
		return this.jdbc
			.sql("""
					select id from import_job j where finished_at is null
					  or exists (select from import_waiting w join import_name n on n.job = w.job and n.name = w.name where w.job = j.id)
					  or exists (select from import_withdrawal w where w.job = j.id) and exists (select from import_left(j.id))
					order by created_at""")
			.query(UUID.class)
			.list();
	}

	void progress(UUID id, ImportJob.Counts counts) {
		this.jdbc
			.sql("""
					update import_job set status = 'running', accepted = :accepted, kept = :kept, changed = :changed, waiting = :waiting, rejected = :rejected,
					  already_imported = :already where id = :id""")
			.param("accepted", counts.accepted())
			.param("kept", counts.kept())
			.param("changed", counts.changed())
			.param("waiting", counts.waiting())
			.param("rejected", counts.rejected())
			.param("already", counts.alreadyImported())
			.param("id", id)
			.update();
	}

	void finish(UUID id, @Nullable String failure) {
		this.jdbc.sql("""
				update import_job set status = :status, failure = :failure, finished_at = clock_timestamp(), file = null
				where id = :id and finished_at is null""")
			.param("status", (failure != null) ? "failed" : "done")
			.param("failure", failure, java.sql.Types.VARCHAR)
			.param("id", id)
			.update();
	}

	/**
	 * Keeps a rejected row; a job that goes on after a restart may bring it again.
	 */
	void reject(UUID id, FileRow.Rejected row) {
		this.jdbc.sql("insert into import_rejection (job, row_number, reason) values (?, ?, ?) on conflict do nothing")
			.params(id, row.number(), row.reason())
			.update();
		this.jdbc.sql(
				"insert into import_rejected_cells (job, row_number, cells) values (?, ?, ?::jsonb) on conflict do nothing")
			.params(id, row.number(), this.json.writeValueAsString(row.cells()))
			.update();
	}

	/**
	 * Keeps what is to be told of rows that are taken, of those of which anything is.
	 */
	void note(UUID id, List<FileRow.Sound> rows) {
		List<FileRow.Sound> told = rows.stream().filter((row) -> row.note() != null).toList();
		if (!told.isEmpty()) {
			this.jdbc.sql("""
					insert into import_note (job, row_number, note)
					select ?, t.row_number, t.note from unnest(?, ?) t (row_number, note) on conflict do nothing""")
				.params(id, told.stream().map(FileRow.Sound::number).toArray(Integer[]::new),
						told.stream().map(FileRow.Sound::note).toArray(String[]::new))
				.update();
		}
	}

	/**
	 * What is to be told of rows that were taken, in the order of the file.
	 * @param after the last row already seen, or 0
	 */
	public List<Note> notes(Actor actor, UUID id, long after, int limit) {
		return this.jdbc.sql(
				"select row_number, note from import_note where job = ? and row_number > ? order by row_number limit ?")
			.params(get(actor, id).id(), after, limit)
			.query((row, number) -> new Note(row.getInt("row_number"), row.getString("note")))
			.list();
	}

	/**
	 * Reads the rows of a job.
	 */
	RowReader reader(ImportJob job, ImportPlan plan, SpeciesCatalogue catalogue) {
		return new RowReader(plan, header(job.id()).size(), catalogue,
				this.rules.get(job.county()).day(this.clock.now()));
	}

	/**
	 * How the rows of a job are read.
	 */
	ImportPlan plan(UUID id) {
		// The mapping was held against the day on which the file came.
		return new MappingCheck(header(id))
			.plan(this.json.readValue(this.jdbc.sql("select mapping::text from import_job where id = ?")
				.param(id)
				.query(String.class)
				.single(), MappingBody.class), LocalDate.MAX);
	}

	List<String> header(UUID id) {
		return texts(this.jdbc.sql("select header::text from import_job where id = ?")
			.param(id)
			.query(String.class)
			.single());
	}

	/**
	 * Hands over the rejected rows in the order of the file.
	 */
	void forEachRejected(UUID id, Consumer<FileRow.Rejected> consumer) {
		this.jdbc.sql("""
				select r.row_number, r.reason, coalesce(c.cells::text, '[]') as cells from import_rejection r
				left join import_rejected_cells c on c.job = r.job and c.row_number = r.row_number
				where r.job = ? order by r.row_number""").param(id).query((row) -> {
			consumer.accept(new FileRow.Rejected(row.getInt("row_number"), row.getString("reason"),
					texts(row.getString("cells"))));
		});
	}

	private List<String> texts(String array) {
		return this.json.readValue(array, TEXTS);
	}

	private static ImportJob job(ResultSet row, int number) throws SQLException {
		return new ImportJob(row.getObject("id", UUID.class), row.getString("county"),
				row.getObject("started_by", UUID.class), row.getString("state"), row.getBoolean("dry_run"),
				row.getInt("row_count"),
				new ImportJob.Counts(row.getInt("accepted"), row.getInt("kept"), row.getInt("changed"),
						row.getInt("waiting"), row.getInt("rejected"), row.getInt("already_imported")),
				row.getString("failure"), SqlTime.get(row, "created_at"), SqlTime.find(row, "finished_at"),
				SqlTime.find(row, "withdrawn_at"), row.getInt("notes"), row.getLong("revision"));
	}

	/**
	 * What is to be told of a row that was taken.
	 */
	public record Note(int row, String note) {
	}

	/**
	 * What was sent: the mapping as it was written, and the file.
	 */
	record Sent(String mapping, List<String> header, byte[] file) {
	}

}

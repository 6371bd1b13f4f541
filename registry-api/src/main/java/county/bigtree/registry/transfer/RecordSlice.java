package county.bigtree.registry.transfer;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

import county.bigtree.domain.standing.TitleReason;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.standing.Standings;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Takes a few rows of an import as one change. Rows that are on the books already are
 * passed over, so a slice may be tried again, and an import run again from its start.
 */
@Component
class RecordSlice {

	private final Journal journal;

	private final RecordRow recordRow;

	private final Standings standings;

	private final ImportJobs jobs;

	private final WaitingRows names;

	private final JdbcClient jdbc;

	RecordSlice(Journal journal, RecordRow recordRow, Standings standings, ImportJobs jobs, WaitingRows names,
			JdbcClient jdbc) {
		this.journal = journal;
		this.recordRow = recordRow;
		this.standings = standings;
		this.jobs = jobs;
		this.names = names;
		this.jdbc = jdbc;
	}

	/**
	 * Takes the rows.
	 * @param before what became of the rows before them
	 * @return what became of all rows up to these
	 */
	@Transactional
	ImportJob.Counts record(ImportJob job, ImportPlan plan, List<FileRow> rows, ImportJob.Counts before) {
		List<FileRow.Sound> sound = new ArrayList<>();
		List<FileRow.Waiting> waiting = new ArrayList<>();
		int rejections = 0;
		for (FileRow row : rows) {
			if (row instanceof FileRow.Rejected rejected) {
				this.jobs.reject(job.id(), rejected);
				rejections++;
			}
			else if (row instanceof FileRow.Waiting one) {
				waiting.add(one);
			}
			else if (row instanceof FileRow.Sound one) {
				sound.add(one);
			}
		}
		ImportJob.Counts counts = before.plus(new ImportJob.Counts(0, 0, 0, rejections, 0))
			.plus(waiting.isEmpty() ? ImportJob.Counts.NONE : letWait(job, waiting))
			.plus(sound.isEmpty() ? ImportJob.Counts.NONE : take(job, plan, sound));
		this.jobs.progress(job.id(), counts);
		return counts;
	}

	private ImportJob.Counts letWait(ImportJob job, List<FileRow.Waiting> rows) {
		Set<String> known = known(job.county(), rows.stream().map(FileRow.Waiting::key).toList()).keySet();
		List<FileRow.Waiting> news = rows.stream().filter((row) -> !known.contains(row.key())).toList();
		news.forEach((row) -> this.names.letWait(job.id(), row));
		return new ImportJob.Counts(0, 0, news.size(), 0, rows.size() - news.size());
	}

	/**
	 * Takes some rows of which it has become known what their name means.
	 * @return how many those were
	 */
	@Transactional
	int recordMatched(ImportJob job, ImportPlan plan, RowReader reader, int most) {
		// Under the head: rows of an import that is being taken back wait no longer.
		Change change = this.journal.open(job.county());
		List<FileRow> rows = this.names.release(job.id(), reader, most);
		List<FileRow.Sound> sound = rows.stream()
			.filter(FileRow.Sound.class::isInstance)
			.map(FileRow.Sound.class::cast)
			.toList();
		rows.stream()
			.filter(FileRow.Rejected.class::isInstance)
			.map(FileRow.Rejected.class::cast)
			.forEach((row) -> this.jobs.reject(job.id(), row));
		ImportJob.Counts counts = new ImportJob.Counts(0, 0, 0, rows.size() - sound.size(), 0);
		this.names.count(job.id(), sound.isEmpty() ? counts : counts.plus(take(change, job, plan, sound)));
		return rows.size();
	}

	private ImportJob.Counts take(ImportJob job, ImportPlan plan, List<FileRow.Sound> rows) {
		if (plan.dryRun()) {
			rows.forEach((row) -> this.jobs.note(job.id(), row));
			return counts(job, rows, known(job.county(), keys(rows)));
		}
		return take(this.journal.open(job.county()), job, plan, rows);
	}

	private ImportJob.Counts take(Change change, ImportJob job, ImportPlan plan, List<FileRow.Sound> rows) {
		rows.forEach((row) -> this.jobs.note(job.id(), row));
		Map<String, UUID> known = known(job.county(), keys(rows));
		List<UUID> trees = rows.stream()
			.filter((row) -> !known.containsKey(row.key()))
			.map((row) -> this.recordRow.record(change, job, plan, row))
			.toList();
		if (!trees.isEmpty()) {
			this.standings.refresh(change, trees, TitleReason.SIGNED_OFF);
			this.journal.close(change, "imported", job.startedBy());
		}
		return counts(job, rows, known);
	}

	/**
	 * Rows that this same job took before it was interrupted are its own.
	 */
	private static ImportJob.Counts counts(ImportJob job, List<FileRow.Sound> rows, Map<String, UUID> known) {
		List<FileRow.Sound> taken = rows.stream()
			.filter((row) -> known.getOrDefault(row.key(), job.id()).equals(job.id()))
			.toList();
		int ranked = (int) taken.stream().filter(FileRow.Sound::ranked).count();
		return new ImportJob.Counts(ranked, taken.size() - ranked, 0, 0, rows.size() - taken.size());
	}

	private static List<String> keys(List<FileRow.Sound> rows) {
		return rows.stream().map(FileRow.Sound::key).toList();
	}

	/**
	 * Which of the rows are on the books, each with the job that brought it. Those of an
	 * import that was taken back are not.
	 */
	private Map<String, UUID> known(String county, List<String> keys) {
		Map<String, UUID> known = new HashMap<>();
		this.jdbc.sql("""
				select row_key, job from import_row r where county = :county and row_key in (:keys)
				  and not exists (select from import_withdrawal where job = r.job)""")
			.param("county", county)
			.param("keys", keys)
			.query((row) -> {
				known.put(row.getString("row_key"), row.getObject("job", UUID.class));
			});
		return known;
	}

}

package county.bigtree.registry.transfer;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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

	private final JdbcClient jdbc;

	RecordSlice(Journal journal, RecordRow recordRow, Standings standings, ImportJobs jobs, JdbcClient jdbc) {
		this.journal = journal;
		this.recordRow = recordRow;
		this.standings = standings;
		this.jobs = jobs;
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
		for (FileRow row : rows) {
			if (row instanceof FileRow.Rejected rejected) {
				this.jobs.reject(job.id(), rejected);
			}
			else if (row instanceof FileRow.Sound one) {
				sound.add(one);
			}
		}
		int rejected = rows.size() - sound.size();
		ImportJob.Counts counts = before.plus(new ImportJob.Counts(0, 0, rejected, 0))
			.plus(sound.isEmpty() ? ImportJob.Counts.NONE : take(job, plan, sound));
		this.jobs.progress(job.id(), counts);
		return counts;
	}

	private ImportJob.Counts take(ImportJob job, ImportPlan plan, List<FileRow.Sound> rows) {
		if (plan.dryRun()) {
			return counts(job, rows, known(job.county(), rows));
		}
		Change change = this.journal.open(job.county());
		Map<String, UUID> known = known(job.county(), rows);
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
		return new ImportJob.Counts(ranked, taken.size() - ranked, 0, rows.size() - taken.size());
	}

	/**
	 * Which of the rows are on the books, each with the job that brought it.
	 */
	private Map<String, UUID> known(String county, List<FileRow.Sound> rows) {
		Map<String, UUID> known = new HashMap<>();
		this.jdbc.sql("select row_key, job from import_row where county = :county and row_key in (:keys)")
			.param("county", county)
			.param("keys", rows.stream().map(FileRow.Sound::key).toList())
			.query((row) -> {
				known.put(row.getString("row_key"), row.getObject("job", UUID.class));
			});
		return known;
	}

}

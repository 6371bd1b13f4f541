package county.bigtree.registry.transfer;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

import county.bigtree.domain.standing.TitleReason;
import county.bigtree.registry.condition.ReportCondition;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.species.Species;
import county.bigtree.registry.species.SpeciesCatalogue;
import county.bigtree.registry.standing.Standings;

import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Takes a few rows of an import as one change, and what they say of the condition of
 * trees on the books as changes of their own. Rows that are on the books already are
 * passed over, so a slice may be tried again, and an import run again from its start.
 */
@Component
class RecordSlice {

	private final Journal journal;

	private final RecordRow recordRow;

	private final Standings standings;

	private final ImportJobs jobs;

	private final WaitingRows names;

	private final KnownRows known;

	private final SpeciesCatalogue catalogue;

	private final Facts facts;

	RecordSlice(Journal journal, RecordRow recordRow, Standings standings, ImportJobs jobs, WaitingRows names,
			KnownRows known, SpeciesCatalogue catalogue, Facts facts) {
		this.journal = journal;
		this.recordRow = recordRow;
		this.standings = standings;
		this.jobs = jobs;
		this.names = names;
		this.known = known;
		this.catalogue = catalogue;
		this.facts = facts;
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
		ImportJob.Counts counts = before.plus(ImportJob.Counts.rejected(rejections))
			.plus(waiting.isEmpty() ? ImportJob.Counts.NONE : letWait(job, waiting))
			.plus(sound.isEmpty() ? ImportJob.Counts.NONE : take(job, plan, sound));
		this.jobs.progress(job.id(), counts);
		return counts;
	}

	private ImportJob.Counts letWait(ImportJob job, List<FileRow.Waiting> rows) {
		Set<String> known = this.known.find(job, rows.stream().map(FileRow.Waiting::key).toList()).keySet();
		List<FileRow.Waiting> news = rows.stream().filter((row) -> !known.contains(row.key())).toList();
		news.forEach((row) -> this.names.letWait(job.id(), row));
		return new ImportJob.Counts(0, 0, 0, news.size(), 0, rows.size() - news.size());
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
		ImportJob.Counts counts = ImportJob.Counts.rejected(rows.size() - sound.size());
		this.names.count(job.id(), sound.isEmpty() ? counts : counts.plus(take(change, job, plan, sound)));
		return rows.size();
	}

	private ImportJob.Counts take(ImportJob job, ImportPlan plan, List<FileRow.Sound> rows) {
		if (plan.dryRun()) {
			KnownRows.Sorted sorted = this.known.sort(job, rows);
			this.jobs.note(job.id(), sorted.told());
			return sorted.total();
		}
		return take(this.journal.open(job.county()), job, plan, rows);
	}

	private ImportJob.Counts take(Change change, ImportJob job, ImportPlan plan, List<FileRow.Sound> rows) {
		KnownRows.Sorted sorted = this.known.sort(job, rows);
		this.jobs.note(job.id(), sorted.told());
		List<UUID> trees = new ArrayList<>();
		Map<String, Species> species = this.catalogue
			.all(sorted.fresh().stream().map(FileRow.Sound::species).distinct().toList());
		this.facts.together(change, () -> {
			trees.addAll(this.recordRow.record(change, job, plan, sorted.fresh(), species));
			for (KnownRows.Further further : sorted.further()) {
				if (further.row().sight() == null) {
					this.recordRow.add(change, job, plan, further.tree(), further.row());
					trees.add(further.tree());
				}
			}
		});
		if (!trees.isEmpty()) {
			this.standings.refresh(change, trees, TitleReason.SIGNED_OFF);
			this.journal.close(change, "imported", job.startedBy());
		}
		sorted.further().forEach((further) -> takeSight(job, plan, further));
		return sorted.total();
	}

	/**
	 * What is said of the condition of a tree on the books may end its title, and then
	 * why is told: so it is a change of its own.
	 */
	private void takeSight(ImportJob job, ImportPlan plan, KnownRows.Further further) {
		FileRow.Sight sight = further.row().sight();
		if (sight != null) {
			Change change = this.journal.open(job.county());
			this.recordRow.add(change, job, plan, further.tree(), further.row());
			this.standings.refresh(change, further.tree(), ReportCondition.meaning(sight.condition()));
			this.journal.close(change, "imported", job.startedBy());
		}
	}

}

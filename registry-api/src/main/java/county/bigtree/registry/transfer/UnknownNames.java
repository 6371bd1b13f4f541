package county.bigtree.registry.transfer;

import java.util.List;
import java.util.UUID;

import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.species.SpeciesCatalogue;
import org.jspecify.annotations.Nullable;

import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Names in an import that the catalogue lacks: each is matched once, for all its rows.
 */
@Service
public class UnknownNames {

	private final ImportJobs jobs;

	private final SpeciesCatalogue catalogue;

	private final Journal journal;

	private final JdbcClient jdbc;

	private final ApplicationEventPublisher events;

	UnknownNames(ImportJobs jobs, SpeciesCatalogue catalogue, Journal journal, JdbcClient jdbc,
			ApplicationEventPublisher events) {
		this.jobs = jobs;
		this.catalogue = catalogue;
		this.journal = journal;
		this.jdbc = jdbc;
		this.events = events;
	}

	/**
	 * Names under which rows wait, in the order of their letters.
	 * @param after the last name already seen, or the empty text
	 */
	@Transactional(readOnly = true)
	public List<UnknownName> list(Actor actor, UUID id, String after, int limit) {
		ImportJob job = this.jobs.get(actor, id);
		return this.jdbc.sql("""
				select w.name, count(*) as rows, min(w.row_number) as first_row, min(n.species) as species
				from import_waiting w left join import_name n on n.job = w.job and n.name = w.name
				where w.job = :job and w.name collate "C" > :after
				group by w.name order by w.name collate "C" limit :limit""")
			.param("job", job.id())
			.param("after", after)
			.param("limit", limit)
			.query(UnknownName.class)
			.list();
	}

	/**
	 * Says what a name means. Its rows are taken in the background.
	 * @param species key of a species, or of a genus
	 */
	@Transactional
	public void match(Actor actor, UUID id, String name, String species) {
		ImportJob job = this.jobs.get(actor, id);
		if (this.catalogue.find(species).isEmpty()) {
			throw Problem.invalid("#/species", "unknown", "No species of the catalogue has this key.");
		}
		this.journal.lock(job.county());
		requireWaiting(this.jobs.get(actor, id), name);
		this.jdbc.sql("""
				insert into import_name (job, name, species, matched_by, matched_at)
				values (?, ?, ?, ?, clock_timestamp())""").params(id, name, species, actor.id()).update();
		this.events.publishEvent(new StartImport.Queued(id));
	}

	private void requireWaiting(ImportJob job, String name) {
		if (job.unfinished() || job.dryRun() || job.withdrawnAt() != null) {
			throw Problem.of(ProblemType.CONFLICT, job.dryRun() ? "This was a dry run: send the file to be taken in."
					: "Names can be matched once the import is done, and until it is withdrawn.");
		}
		if (exists("select exists (select from import_name where job = ? and name = ?)", job, name)) {
			throw Problem.of(ProblemType.CONFLICT, "This name has been matched already.");
		}
		if (!exists("select exists (select from import_waiting where job = ? and name = ?)", job, name)) {
			throw Problem.invalid("#/name", "unknown", "No row of this import waits under this name.");
		}
	}

	private boolean exists(String sql, ImportJob job, String name) {
		return this.jdbc.sql(sql).params(job.id(), name).query(Boolean.class).single();
	}

	/**
	 * A name under which rows wait.
	 *
	 * @param rows how many do
	 * @param firstRow number of the first of them in the file
	 * @param species what the name has been said to mean, while its rows are being taken
	 */
	public record UnknownName(String name, int rows, int firstRow, @Nullable String species) {
	}

}

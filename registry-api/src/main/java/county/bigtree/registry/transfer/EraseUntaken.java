package county.bigtree.registry.transfer;

import java.util.UUID;

import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Erases what an import keeps of rows that it has not taken: their cells may name owners
 * and how to reach them.
 */
@Service
public class EraseUntaken {

	private final ImportJobs jobs;

	private final WaitingRows rows;

	private final Journal journal;

	EraseUntaken(ImportJobs jobs, WaitingRows rows, Journal journal) {
		this.jobs = jobs;
		this.rows = rows;
		this.journal = journal;
	}

	/**
	 * Erases the cells of rejected rows, and rejects those that wait for their names.
	 */
	@Transactional
	public void erase(Actor actor, UUID id) {
		this.journal.lock(this.jobs.get(actor, id).county());
		if (this.jobs.get(actor, id).unfinished()) {
			throw Problem.of(ProblemType.CONFLICT, "This import is not finished yet.");
		}
		this.rows.erase(id);
	}

}

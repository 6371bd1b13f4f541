package county.bigtree.registry.transfer;

import java.util.List;
import java.util.UUID;
import java.util.function.LongConsumer;

import county.bigtree.registry.journal.Change;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;

import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Takes an import back whole: decided at once, while its trees come off the books some at
 * a time in the background. Refused where a tree has got facts of its own since.
 */
@Service
public class WithdrawImport {

	/** How many trees in the way are named. */
	private static final int NAMED = 20;

	private static final int AT_ONCE = 500;

	private static final String FURTHER = """
			select t.tag, string_agg(distinct f.what, ', ') as facts
			from import_part r join tree t on t.id = r.tree
			join lateral (
			  select 'identification' as what, recorded_at from identification where tree = r.tree
			  union all select 'location', recorded_at from location where tree = r.tree
			  union all select 'measurement', m.recorded_at from measurement m where m.tree = r.tree
			    and not exists (select from import_row o where o.job = r.job and o.county = m.county and o.seq = m.seq)
			  union all select 'measurement assigned', recorded_at from assignment where tree = r.tree
			  union all select 'sign-off', s.recorded_at from sign_off s join measurement m on m.id = s.measurement
			    where m.tree = r.tree
			  union all select 'setting aside', x.recorded_at from setting_aside x join measurement m on m.id = x.measurement
			    where m.tree = r.tree
			  union all select 'nomination', recorded_at from nomination where tree = r.tree
			  union all select 'condition report', recorded_at from condition_report where tree = r.tree
			  union all select 'eligibility', recorded_at from eligibility where tree = r.tree
			  union all select 'stem ruling', recorded_at from stem_ruling where tree = r.tree
			  union all select 'merge', recorded_at from merge where r.tree in (tree, into_tree)
			  union all select 'split', recorded_at from split where r.tree in (tree, new_tree)
			  union all select 'proposal to move it', recorded_at from relocation_proposal where tree = r.tree
			  union all select 'measurement moved', v.recorded_at from measurement_move v
			    join measurement m on m.id = v.measurement where m.tree = r.tree
			  union all select 'visit planned', recorded_at from visit where tree = r.tree
			  union all select 'outcome of a visit', o.recorded_at from visit_outcome o join visit v on v.id = o.visit
			    where v.tree = r.tree
			  union all select 'owner', recorded_at from tree_owner where tree = r.tree
			  union all select 'taking off', recorded_at from taking_off where tree = r.tree
			) f on f.recorded_at > r.recorded_at or not r.brought and f.what = 'condition report' and f.recorded_at = r.recorded_at
			where r.job = :job group by t.tag order by t.tag limit :most""";

	private final ImportJobs jobs;

	private final WaitingRows waiting;

	private final RecordWithdrawal recording;

	private final TakeOffSlice takingOff;

	private final JdbcClient jdbc;

	private final ApplicationEventPublisher events;

	WithdrawImport(ImportJobs jobs, WaitingRows waiting, RecordWithdrawal recording, TakeOffSlice takingOff,
			JdbcClient jdbc, ApplicationEventPublisher events) {
		this.jobs = jobs;
		this.waiting = waiting;
		this.recording = recording;
		this.takingOff = takingOff;
		this.jdbc = jdbc;
		this.events = events;
	}

	/**
	 * Decides the withdrawal.
	 * @param atOnce whether its trees are taken off now, in the same transaction, and not
	 * bit by bit afterwards: to rehearse it
	 * @param unchanged told the import's revision under the lock; refuses a stale one
	 * @throws Problem of a conflict, with the trees that are in the way
	 */
	@Transactional
	public void withdraw(Actor actor, UUID id, String reason, boolean atOnce, LongConsumer unchanged) {
		Change change = this.recording.open(this.jobs.get(actor, id));
		ImportJob job = this.jobs.get(actor, id);
		if (job.withdrawnAt() != null) {
			throw conflict("This import has been withdrawn already.");
		}
		unchanged.accept(job.revision());
		if (job.unfinished() || job.dryRun()) {
			throw conflict(job.dryRun() ? "A dry run has brought nothing." : "This import is not finished yet.");
		}
		requireUntouched(id);
		this.recording.close(change, job, actor, reason);
		this.waiting.drop(id);
		if (atOnce) {
			takeOff(job);
			return;
		}
		this.events.publishEvent(new StartImport.Queued(id));
	}

	private void takeOff(ImportJob job) {
		int taken = this.takingOff.takeOff(job, AT_ONCE);
		while (taken > 0) {
			taken = this.takingOff.takeOff(job, AT_ONCE);
		}
	}

	private void requireUntouched(UUID id) {
		List<Touched> touched = this.jdbc.sql(FURTHER)
			.param("job", id)
			.param("most", NAMED)
			.query(Touched.class)
			.list();
		if (!touched.isEmpty()) {
			throw conflict("Trees of this import have got further facts since.").with("trees", touched);
		}
	}

	private static Problem conflict(String detail) {
		return Problem.of(ProblemType.CONFLICT, detail);
	}

	/**
	 * A tree that is in the way.
	 *
	 * @param facts what it has got since
	 */
	record Touched(String tag, String facts) {
	}

}

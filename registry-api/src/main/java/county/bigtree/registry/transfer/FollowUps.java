package county.bigtree.registry.transfer;

import java.util.function.BooleanSupplier;
import java.util.function.IntSupplier;

import county.bigtree.registry.species.SpeciesCatalogue;

import org.springframework.stereotype.Component;

/**
 * Does what was decided on an import after its end, some rows at a time: rows whose name
 * has been matched are taken, and trees of an import that was withdrawn come off the
 * books.
 */
@Component
class FollowUps {

	/** A slice holds the county's head, and others wait for it. */
	private static final int ROWS = 50;

	private final ImportJobs jobs;

	private final RecordSlice slices;

	private final TakeOffSlice takingOff;

	private final SpeciesCatalogue catalogue;

	FollowUps(ImportJobs jobs, RecordSlice slices, TakeOffSlice takingOff, SpeciesCatalogue catalogue) {
		this.jobs = jobs;
		this.slices = slices;
		this.takingOff = takingOff;
		this.catalogue = catalogue;
	}

	void run(ImportJob job, BooleanSupplier stopping) {
		if (job.withdrawnAt() != null) {
			repeat(() -> this.takingOff.takeOff(job, ROWS), stopping);
		}
		else if (job.counts().waiting() > 0 && !job.dryRun()) {
			ImportPlan plan = this.jobs.plan(job.id());
			RowReader reader = this.jobs.reader(job, plan, this.catalogue);
			repeat(() -> this.slices.recordMatched(job, plan, reader, ROWS), stopping);
		}
	}

	private static void repeat(IntSupplier slice, BooleanSupplier stopping) {
		int done = 1;
		while (done > 0 && !stopping.getAsBoolean()) {
			done = RunImport.tryRepeatedly(slice::getAsInt);
		}
	}

}

package county.bigtree.registry.transfer;

import java.util.UUID;

import county.bigtree.registry.people.Actor;

import org.springframework.stereotype.Component;

/**
 * Takes in a file of an older record while the caller waits: on the caller's thread, and
 * so at the instant at which the caller lives.
 */
@Component
public class ImportAtOnce {

	private final StartImport start;

	private final RunImport run;

	private final ImportJobs jobs;

	ImportAtOnce(StartImport start, RunImport run, ImportJobs jobs) {
		this.start = start;
		this.run = run;
		this.jobs = jobs;
	}

	/**
	 * Takes the file in and answers what became of it.
	 * @param county a county of this register
	 */
	public ImportJob take(Actor actor, String county, byte[] file, MappingBody mapping) {
		UUID id = this.start.queue(actor, county, file, mapping);
		this.run.run(id);
		return this.jobs.get(actor, id);
	}

}

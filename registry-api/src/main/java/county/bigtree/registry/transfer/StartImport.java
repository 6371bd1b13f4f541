package county.bigtree.registry.transfer;

import java.util.UUID;

import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.RegisterClock;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.rules.RulesReader;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Takes in a file of an older record. What is wrong with the file as a whole or with its
 * mapping is refused at once; its rows are worked through in the background.
 */
@Service
public class StartImport {

	private final ImportJobs jobs;

	private final RulesReader rules;

	private final RegisterClock clock;

	private final JsonMapper json;

	private final ApplicationEventPublisher events;

	StartImport(ImportJobs jobs, RulesReader rules, RegisterClock clock, JsonMapper json,
			ApplicationEventPublisher events) {
		this.jobs = jobs;
		this.rules = rules;
		this.clock = clock;
		this.json = json;
		this.events = events;
	}

	/**
	 * Queues the file, to be worked through in the background, and answers the import's
	 * id.
	 * @param county a county of this register
	 * @param file the file's bytes
	 * @param mapping what its columns mean
	 * @throws Problem where the file can't be read or the mapping does not fit it
	 */
	@Transactional
	public UUID start(Actor actor, String county, byte[] file, MappingBody mapping) {
		UUID id = queue(actor, county, file, mapping);
		this.events.publishEvent(new Queued(id));
		return id;
	}

	/**
	 * Queues the file for somebody else to run.
	 */
	@Transactional
	UUID queue(Actor actor, String county, byte[] file, MappingBody mapping) {
		TableFile table = TableFile.of(file);
		ImportPlan plan = new MappingCheck(table.header()).plan(mapping, this.rules.get(county).day(this.clock.now()));
		UUID id = Uuid7.next();
		ImportJobs.Sent sent = new ImportJobs.Sent(this.json.writeValueAsString(mapping), table.header(), file);
		this.jobs.queue(id, county, actor.id(), sent, plan.dryRun(), table.countRows());
		return id;
	}

	/**
	 * An import waits to be run.
	 */
	record Queued(UUID id) {
	}

}

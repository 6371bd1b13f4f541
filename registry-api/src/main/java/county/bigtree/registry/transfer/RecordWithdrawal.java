package county.bigtree.registry.transfer;

import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.people.Actor;

import org.springframework.stereotype.Component;

/**
 * Records that an import is taken back, as a change of its own.
 */
@Component
class RecordWithdrawal {

	private final Journal journal;

	private final Facts facts;

	private final Texts texts;

	RecordWithdrawal(Journal journal, Facts facts, Texts texts) {
		this.journal = journal;
		this.facts = facts;
		this.texts = texts;
	}

	Change open(ImportJob job) {
		return this.journal.open(job.county());
	}

	void close(Change change, ImportJob job, Actor actor, String reason) {
		this.facts.append(change, FactTable.IMPORT_WITHDRAWAL, "job", job.id(), "by_person", actor.id(), "reason",
				this.texts.keep(change, reason));
		this.journal.close(change, "import-withdrawn", actor.id());
	}

}

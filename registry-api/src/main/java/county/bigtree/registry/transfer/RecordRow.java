package county.bigtree.registry.transfer;

import java.util.UUID;

import county.bigtree.domain.place.Disclosure;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.measurement.Basis;
import county.bigtree.registry.measurement.RecordMeasurement;
import county.bigtree.registry.tree.RegisterTree;

import org.springframework.stereotype.Component;

/**
 * Appends the facts that one row brings: a tree that is on the books on the word of an
 * older record, and its measurement, which counts on the same.
 */
@Component
class RecordRow {

	private static final String CARRIED_OVER = Basis.CARRIED_OVER.word();

	private final RegisterTree register;

	private final RecordMeasurement measurements;

	private final Facts facts;

	private final Texts texts;

	RecordRow(RegisterTree register, RecordMeasurement measurements, Facts facts, Texts texts) {
		this.register = register;
		this.measurements = measurements;
		this.facts = facts;
		this.texts = texts;
	}

	UUID record(Change change, ImportJob job, ImportPlan plan, FileRow.Sound row) {
		UUID tree = this.register.register(change, row.tag());
		this.register.identify(change, tree, row.species(), "record", null);
		// As for any tree whose owner has said nothing.
		this.register.locate(change, tree, change.county(), row.place(), Disclosure.NEARBY, null, null);
		this.register.accept(change, tree, CARRIED_OVER);
		this.measurements.record(change, tree, row.measurement(), job.startedBy(), Basis.CARRIED_OVER, plan.basis(),
				"#");
		this.facts.append(change, FactTable.IMPORT_ROW, "row_key", row.key(), "job", job.id(), "row_number",
				row.number(), "tree", tree);
		if (row.words().any()) {
			this.facts.append(change, FactTable.OLDER_RECORD, "tree", tree, "owner",
					this.texts.keep(change, row.words().owner()), "contact",
					this.texts.keep(change, row.words().contact()), "visit_notes",
					this.texts.keep(change, row.words().visitNotes()));
		}
		return tree;
	}

}

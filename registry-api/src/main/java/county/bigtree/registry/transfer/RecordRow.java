package county.bigtree.registry.transfer;

import java.util.UUID;

import county.bigtree.domain.place.Disclosure;
import county.bigtree.registry.condition.ReportCondition;
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
 * older record, and its measurements, which count on the same; or what is new of a tree
 * that an earlier row brought.
 */
@Component
class RecordRow {

	private static final String CARRIED_OVER = Basis.CARRIED_OVER.word();

	private final RegisterTree register;

	private final RecordMeasurement measurements;

	private final ReportCondition conditions;

	private final Facts facts;

	private final Texts texts;

	RecordRow(RegisterTree register, RecordMeasurement measurements, ReportCondition conditions, Facts facts,
			Texts texts) {
		this.register = register;
		this.measurements = measurements;
		this.conditions = conditions;
		this.facts = facts;
		this.texts = texts;
	}

	UUID record(Change change, ImportJob job, ImportPlan plan, FileRow.Sound row) {
		UUID tree = this.register.register(change, row.tag());
		this.register.identify(change, tree, row.species(), "record", null);
		// As for any tree whose owner has said nothing.
		this.register.locate(change, tree, change.county(), row.place(), Disclosure.NEARBY, null, null);
		this.register.accept(change, tree, CARRIED_OVER);
		add(change, job, plan, tree, row);
		FileRow.Words words = row.words();
		if (words.any()) {
			this.facts.append(change, FactTable.OLDER_RECORD, "tree", tree, "owner",
					this.texts.keep(change, words.owner()), "contact", this.texts.keep(change, words.contact()),
					"finder", this.texts.keep(change, words.finder()), "visit_notes",
					this.texts.keep(change, words.visitNotes()), "popular_name",
					this.texts.keep(change, words.popularName()));
		}
		return tree;
	}

	/**
	 * Appends measurements and the condition of a tree on the books.
	 */
	void add(Change change, ImportJob job, ImportPlan plan, UUID tree, FileRow.Sound row) {
		row.visits()
			.forEach((visit) -> this.measurements.record(change, tree, visit, job.startedBy(), Basis.CARRIED_OVER,
					plan.basis(), "#"));
		FileRow.Sight sight = row.sight();
		if (sight != null) {
			this.conditions.carryOver(change, tree, sight.condition(), sight.observedOn(), job.startedBy());
		}
		this.facts.append(change, FactTable.IMPORT_ROW, "row_key", row.key(), "job", job.id(), "row_number",
				row.number(), "tree", tree);
	}

}

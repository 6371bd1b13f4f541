package county.bigtree.registry.transfer;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import county.bigtree.domain.place.Disclosure;
import county.bigtree.registry.condition.ReportCondition;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.measurement.Basis;
import county.bigtree.registry.measurement.RecordMeasurement;
import county.bigtree.registry.species.Species;
import county.bigtree.registry.tree.RegisterTree;
import org.jspecify.annotations.Nullable;

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

	/**
	 * Appends what rows bring that each bring a tree.
	 * @param species the species that the rows name, by key
	 * @return the trees in the order of the rows
	 */
	List<UUID> record(Change change, ImportJob job, ImportPlan plan, List<FileRow.Sound> rows,
			Map<String, Species> species) {
		List<@Nullable String> tags = new ArrayList<>();
		rows.forEach((row) -> tags.add(row.tag()));
		List<UUID> trees = this.register.register(change, tags);
		for (int index = 0; index < rows.size(); index++) {
			FileRow.Sound row = rows.get(index);
			Species named = species.get(row.species());
			if (named == null) {
				throw new IllegalStateException("The catalogue no longer has " + row.species());
			}
			record(change, job, plan, trees.get(index), row, named);
		}
		return trees;
	}

	private void record(Change change, ImportJob job, ImportPlan plan, UUID tree, FileRow.Sound row, Species species) {
		this.register.identify(change, tree, species, "record");
		// As for any tree whose owner has said nothing.
		this.register.locate(change, tree, change.county(), row.place(), Disclosure.NEARBY, null, null);
		this.register.accept(change, tree, CARRIED_OVER);
		add(change, job, plan, tree, row, species.scientificName());
		FileRow.Words words = row.words();
		if (words.any()) {
			this.facts.append(change, FactTable.OLDER_RECORD, "tree", tree, "owner",
					this.texts.keep(change, words.owner()), "contact", this.texts.keep(change, words.contact()),
					"finder", this.texts.keep(change, words.finder()), "visit_notes",
					this.texts.keep(change, words.visitNotes()), "popular_name",
					this.texts.keep(change, words.popularName()));
		}
	}

	/**
	 * Appends measurements and the condition of a tree on the books.
	 */
	void add(Change change, ImportJob job, ImportPlan plan, UUID tree, FileRow.Sound row) {
		add(change, job, plan, tree, row, null);
	}

	private void add(Change change, ImportJob job, ImportPlan plan, UUID tree, FileRow.Sound row,
			@Nullable String scientificName) {
		row.visits()
			.forEach((visit) -> this.measurements.carryOver(change, tree, scientificName, visit, job.startedBy(),
					plan.basis(), "#"));
		FileRow.Sight sight = row.sight();
		if (sight != null) {
			this.conditions.carryOver(change, tree, sight.condition(), sight.observedOn(), job.startedBy());
		}
		this.facts.append(change, FactTable.IMPORT_ROW, "row_key", row.key(), "job", job.id(), "row_number",
				row.number(), "tree", tree);
	}

}

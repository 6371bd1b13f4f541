package county.bigtree.registry.letter;

import java.util.Objects;
import java.util.UUID;
import java.util.function.LongConsumer;

import county.bigtree.domain.place.Disclosure;
import county.bigtree.domain.standing.Condition;
import county.bigtree.registry.condition.ReportCondition;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.nomination.FileNomination;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.tree.CorrectTree;
import county.bigtree.registry.tree.TreeDirectory;
import county.bigtree.registry.visit.PlanBody;
import county.bigtree.registry.visit.PlanVisit;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Makes of a letter what it becomes, through the use case that does that anywhere else,
 * and records that it did, all in one transaction.
 */
@Service
public class DecideLetter {

	/** The letter is what was decided on, and it has one outcome. */
	private static final LongConsumer WHATEVER_ITS_REVISION = (revision) -> {
	};

	private final Letters letters;

	private final Journal journal;

	private final Letters.Writing writing;

	private final UseCases useCases;

	private final TreeDirectory trees;

	DecideLetter(Letters letters, Journal journal, Letters.Writing writing, UseCases useCases, TreeDirectory trees) {
		this.letters = letters;
		this.journal = journal;
		this.writing = writing;
		this.useCases = useCases;
		this.trees = trees;
	}

	/**
	 * Decides on a letter, once.
	 */
	@Transactional
	public void decide(Actor actor, UUID id, LetterOutcomeBody body) {
		Letter letter = this.letters.get(actor, id);
		this.journal.lock(letter.county());
		if (!this.letters.get(actor, id).isOpen()) {
			throw Problem.of(ProblemType.CONFLICT, "What became of this letter is told already.");
		}
		Made made = make(actor, letter, body);
		Change change = this.journal.open(letter.county());
		this.writing.facts()
			.append(change, FactTable.LETTER_OUTCOME, "letter", id, "became", body.became(), "nomination",
					made.nomination(), "condition_report", made.report(), "visit", made.visit(), "corrected_tree",
					made.corrected(), "answer", this.writing.texts().keep(change, body.answer()), "by_person",
					actor.id());
		this.journal.close(change, "letter-decided", actor.id());
	}

	private Made make(Actor actor, Letter letter, LetterOutcomeBody body) {
		requireOnlyWhatItBecame(body);
		return switch (body.became()) {
			case "nomination" ->
				new Made(this.useCases.filing.file(actor, letter.county(), Objects.requireNonNull(body.nomination())),
						null, null, null);
			case "report" -> new Made(null, report(actor, letter, Objects.requireNonNull(body.report())), null, null);
			case "visit" -> new Made(null, null, visit(actor, letter, Objects.requireNonNull(body.visit())), null);
			case "correction" ->
				new Made(null, null, null, correct(actor, letter, Objects.requireNonNull(body.correction())));
			default -> new Made(null, null, null, null);
		};
	}

	private static void requireOnlyWhatItBecame(LetterOutcomeBody body) {
		require("nomination", body.became(), body.nomination());
		require("report", body.became(), body.report());
		require("visit", body.became(), body.visit());
		require("correction", body.became(), body.correction());
		if (body.became().equals("answer") && (body.answer() == null || body.answer().isBlank())) {
			throw Problem.invalid("#/answer", "missing", "say what was answered");
		}
	}

	private static void require(String what, String became, @Nullable Object given) {
		if (what.equals(became) != (given != null)) {
			throw Problem.invalid("#/" + what, (given != null) ? "contradicts" : "missing",
					"is given where the letter becomes that, and only there");
		}
	}

	private UUID visit(Actor actor, Letter letter, PlanBody visit) {
		requireHere(letter, visit.tree(), "#/visit/tree");
		return this.useCases.planning.plan(actor, visit);
	}

	/**
	 * What a letter becomes is of the county that got it, whose head is taken: that of
	 * another would be taken out of turn.
	 */
	private void requireHere(Letter letter, String tree, String pointer) {
		boolean here = this.trees.find(tree).filter((found) -> found.county().equals(letter.county())).isPresent();
		if (!here) {
			throw Problem.invalid(pointer, "unknown", "no tree of the county that got the letter has this id or tag");
		}
	}

	private UUID report(Actor actor, Letter letter, LetterOutcomeBody.Report report) {
		Condition condition = Condition.find(report.condition())
			.orElseThrow(() -> Problem.invalid("#/report/condition", "unknown",
					"must be upright, declining, damaged, dead, fallen, removed or not-found"));
		return this.useCases.reporting.report(actor, tree(letter, report.tree(), "#/report/tree"), condition,
				report.observedOn(), null, report.remarks());
	}

	private UUID correct(Actor actor, Letter letter, LetterOutcomeBody.Correction correction) {
		String tree = tree(letter, correction.tree(), "#/correction/tree");
		String visibility = correction.visibility();
		String species = correction.species();
		if (visibility == null && species == null && correction.location() == null) {
			throw Problem.invalid("#/correction", "missing", "give a visibility, a location or a species");
		}
		if (species != null) {
			this.useCases.correcting.identify(actor, tree, species,
					(correction.by() != null) ? correction.by() : "record", correction.reason(), WHATEVER_ITS_REVISION);
		}
		if (correction.location() != null) {
			this.useCases.correcting.locate(actor, tree, correction.location(), null, correction.reason(),
					WHATEVER_ITS_REVISION);
		}
		if (visibility != null) {
			this.useCases.correcting.show(actor, tree, Disclosure.find(visibility).orElseThrow(), correction.reason(),
					WHATEVER_ITS_REVISION);
		}
		return this.trees.get(tree).id();
	}

	private String tree(Letter letter, @Nullable String named, String pointer) {
		if (named != null) {
			requireHere(letter, named, pointer);
			return named;
		}
		if (letter.tree() == null) {
			throw Problem.invalid(pointer, "missing", "the letter names no tree of the county: say which");
		}
		requireHere(letter, letter.tree().toString(), pointer);
		return letter.tree().toString();
	}

	private record Made(@Nullable UUID nomination, @Nullable UUID report, @Nullable UUID visit,
			@Nullable UUID corrected) {
	}

	/**
	 * What a letter may become.
	 */
	@org.springframework.stereotype.Component
	static class UseCases {

		private final FileNomination filing;

		private final ReportCondition reporting;

		private final PlanVisit planning;

		private final CorrectTree correcting;

		UseCases(FileNomination filing, ReportCondition reporting, PlanVisit planning, CorrectTree correcting) {
			this.filing = filing;
			this.reporting = reporting;
			this.planning = planning;
			this.correcting = correcting;
		}

	}

}

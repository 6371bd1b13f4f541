package county.bigtree.registry.nomination;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import county.bigtree.domain.review.AnswerTime;
import county.bigtree.domain.review.NominationMove;
import county.bigtree.domain.review.NominationStatus;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.rules.CountyRules;
import county.bigtree.registry.rules.RulesReader;
import county.bigtree.registry.tree.ChangeAtTree;
import county.bigtree.registry.tree.TreeDirectory;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * What the register does by itself about a returned nomination: reminds its nominator,
 * and lets it lapse when the day has come that the reminder named. Each is judged under
 * the lock, so that of two nodes one does it and an answer just given stands.
 */
@Service
class AwaitAnswers {

	private final NominationBook book;

	private final TreeDirectory trees;

	private final ChangeAtTree changes;

	private final RulesReader rules;

	private final Facts facts;

	AwaitAnswers(NominationBook book, TreeDirectory trees, ChangeAtTree changes, RulesReader rules, Facts facts) {
		this.book = book;
		this.trees = trees;
		this.changes = changes;
		this.rules = rules;
		this.facts = facts;
	}

	/**
	 * The nominations that are returned, in the order of their filing.
	 */
	@Transactional(readOnly = true)
	List<UUID> returned() {
		return this.book.withStatus(NominationStatus.RETURNED);
	}

	/**
	 * Reminds, lets lapse, or leaves alone.
	 * @return what was done, or null
	 */
	@Transactional
	@Nullable Done await(UUID id) {
		Change change = this.changes.openAnyhow(this.trees.get(this.book.get(id).tree()));
		NominationBook.Nomination nomination = this.book.get(id);
		if (nomination.state() != NominationStatus.RETURNED) {
			return null;
		}
		LocalDate today = change.today(nomination.county());
		LocalDate lapsesOn = nomination.lapsesOn();
		if (lapsesOn != null) {
			return AnswerTime.mayLapse(lapsesOn, today).isEmpty() ? lapse(change, nomination) : null;
		}
		CountyRules county = this.rules.get(nomination.county());
		AnswerTime time = new AnswerTime(county.day(returnedAt(id)), county.at(change.recordedAt()).answerDays());
		return today.isBefore(time.remindsOn()) ? null : remind(change, nomination, time.lapsesOn(today));
	}

	private Instant returnedAt(UUID id) {
		List<NominationBook.Move> moves = this.book.moves(id);
		return moves.get(moves.size() - 1).recordedAt();
	}

	private Done remind(Change change, NominationBook.Nomination nomination, LocalDate lapsesOn) {
		this.facts.append(change, FactTable.NOMINATION_REMINDER, "id", Uuid7.next(), "nomination", nomination.id(),
				"lapses_on", lapsesOn);
		this.changes.close(change, "nomination-reminded", null);
		return Done.REMINDED;
	}

	private Done lapse(Change change, NominationBook.Nomination nomination) {
		this.book.move(change, nomination, NominationMove.LAPSE.code(), NominationStatus.DECLINED, null, null, null);
		this.changes.close(change, "nomination-lapse", null);
		return Done.LAPSED;
	}

	/** What the register did. */
	enum Done {

		REMINDED, LAPSED

	}

}

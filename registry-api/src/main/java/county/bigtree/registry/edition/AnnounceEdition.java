package county.bigtree.registry.edition;

import java.util.UUID;

import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.registry.id.Uuid7;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.FactTable;
import county.bigtree.registry.journal.Facts;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.problem.ProblemType;
import county.bigtree.registry.rules.RulesReader;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Announces editions: by when to file, and of which day the list will be.
 */
@Service
public class AnnounceEdition {

	private final Journal journal;

	private final Facts facts;

	private final RulesReader rules;

	private final Editions editions;

	AnnounceEdition(Journal journal, Facts facts, RulesReader rules, Editions editions) {
		this.journal = journal;
		this.facts = facts;
		this.rules = rules;
		this.editions = editions;
	}

	/**
	 * Announces an edition and answers its id.
	 * @throws Problem where the days are out of order, or the county has an edition of
	 * this name
	 */
	@Transactional
	public UUID announce(Actor actor, String county, EditionBody body) {
		requireOrder(body);
		Change change = this.journal.open(county);
		this.editions.find(county, body.name()).ifPresent((found) -> {
			throw Problem.of(ProblemType.CONFLICT, "The county has an edition of this name.");
		});
		UUID id = Uuid7.next();
		this.facts.append(change, FactTable.EDITION, "id", id, "name", body.name(), "filings_by", body.filingsBy(),
				"grace_days", body.graceDays(), "closes_on", body.closesOn(), "time_zone",
				this.rules.get(county).zone().getId(), "announced_by", actor.id());
		this.journal.close(change, "edition-announced", actor.id());
		return id;
	}

	private static void requireOrder(EditionBody body) {
		if (body.filingsBy().isBefore(Rulebook.BEGINNING)) {
			throw Problem.invalid("#/filingsBy", "out-of-range", "must not be before " + Rulebook.BEGINNING);
		}
		if (body.closesOn().isBefore(body.graceEnds())) {
			throw Problem.invalid("#/closesOn", "out-of-range",
					"must not be before the days of grace end, %s".formatted(body.graceEnds()));
		}
	}

}

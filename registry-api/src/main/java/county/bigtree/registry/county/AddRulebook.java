package county.bigtree.registry.county;

import county.bigtree.domain.quantity.InvalidReadingException;
import county.bigtree.domain.rulebook.Rulebook;
import county.bigtree.registry.journal.Change;
import county.bigtree.registry.journal.Journal;
import county.bigtree.registry.journal.Texts;
import county.bigtree.registry.people.Actor;
import county.bigtree.registry.problem.Problem;
import county.bigtree.registry.rules.RulebookJson;
import county.bigtree.registry.standing.Standings;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Adds a rulebook to a county: immutable, from its date on.
 */
@Service
public class AddRulebook {

	private final Journal journal;

	private final FoundCounty founding;

	private final Standings standings;

	private final Texts texts;

	private final ListedSpecies listed;

	AddRulebook(Journal journal, FoundCounty founding, Standings standings, Texts texts, ListedSpecies listed) {
		this.journal = journal;
		this.founding = founding;
		this.standings = standings;
		this.texts = texts;
		this.listed = listed;
	}

	/**
	 * Adds the rulebook.
	 * @param atOnce whether the standings follow in the same transaction, and not when
	 * somebody next looks: to rehearse it
	 */
	@Transactional
	public void add(Actor actor, String county, RulebookJson body, @Nullable String reason, boolean atOnce) {
		Rulebook rulebook = valid(body, "#");
		this.listed.require(rulebook, "#");
		Change change = this.journal.open(county);
		this.founding.appendRulebook(change, rulebook, this.texts.keep(change, reason));
		this.standings.rulebookRecorded(change);
		if (atOnce) {
			this.standings.followAtOnce(change);
		}
		this.journal.close(change, "rulebook", actor.id());
	}

	static Rulebook valid(RulebookJson body, String pointer) {
		try {
			return body.toRulebook();
		}
		catch (InvalidReadingException ex) {
			throw Problem.invalid(pointer + "/tolerances/" + ex.path(), ex.code(), ex.detail());
		}
		catch (IllegalArgumentException ex) {
			throw Problem.invalid(pointer, "out-of-range", String.valueOf(ex.getMessage()));
		}
	}

}
